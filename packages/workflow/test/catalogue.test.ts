import { type EventType, ROLES, shutdownPayloads, sitePayloads } from '@seatwell/contract';
import {
  ACTIONS,
  type Action,
  actionFor,
  CATALOGUE,
  eventKind,
  needsSignature,
  reachCounts,
  roleAllows,
} from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';
import { PAYLOADS } from './support/payloads.ts';

const types = Object.keys(CATALOGUE) as EventType[];

describe('the catalogue', () => {
  it('has every event of the contract in its stream', () => {
    const inStream = (stream: 'shutdown' | 'site') => types.filter((t) => CATALOGUE[t].stream === stream).sort();
    expect(inStream('shutdown')).toEqual(Object.keys(shutdownPayloads).sort());
    expect(inStream('site')).toEqual(Object.keys(sitePayloads).sort());
  });

  it.each(types)('%s has an action of the role table, and its sample payload is sound', (type) => {
    expect(ACTIONS).toHaveProperty(actionFor(type, PAYLOADS[type]));
    const schema = { ...shutdownPayloads, ...sitePayloads }[type];
    expect(schema.safeParse(PAYLOADS[type])).toMatchObject({ success: true });
  });

  it('records offline only what is a fact', () => {
    for (const type of types.filter((t) => CATALOGUE[t].offline && t !== 'checked'))
      expect(CATALOGUE[type].kind, type).toBe('fact');
  });

  it.each([
    ['self', 'fact', 'check-own-work'],
    ['chargehand', 'fact', 'check-as-chargehand'],
    ['sample', 'decision', 'check-quality'],
    ['every', 'decision', 'check-quality'],
    ['witness', 'decision', 'check-quality'],
  ] as const)('a check at level %s is a %s that takes %s, and is signed', (level, kind, action) => {
    const payload = { level, outcome: 'accepted', reason: null };
    expect(eventKind('checked', payload)).toBe(kind);
    expect(actionFor('checked', payload)).toBe(action);
    expect(needsSignature('checked', payload)).toBe(true);
  });

  it.each([
    'target-approved',
    'break-released',
    'checked',
    'witnessed',
    'proven',
    'deviation-accepted',
    'hand-over-offered',
    'handed-over',
    'revoked',
    'review-settled',
  ] as const)('%s is signed', (type) => expect(needsSignature(type, PAYLOADS[type])).toBe(true));
});

describe('who may do what', () => {
  const who = (action: Action) => ROLES.filter((role) => roleAllows(role, action));

  it.each([
    ['release-break', ['operations']],
    ['approve-target', ['engineer']],
    ['prove', ['inspector']],
    ['witness', ['witness']],
    ['tighten', ['technician', 'chargehand', 'inspector']],
    ['check-quality', ['inspector']],
    ['manage-accounts', ['administrator']],
    ['operate', ['administrator']],
    ['offer-hand-over', ['coordinator']],
    ['hand-over', ['operations']],
  ] as const)('%s: %s', (action, roles) => expect(who(action)).toEqual(roles));

  it('everyone signed in raises punch items, found joints and leaks', () => {
    for (const action of ['raise-punch', 'find-joint', 'report-leak'] as const) expect(who(action)).toEqual(ROLES);
  });

  it('a grant for a crew does not reach what belongs to the site', () => {
    expect(reachCounts('crew', 'manage-people')).toBe(false);
    expect(reachCounts('crew', 'tighten')).toBe(true);
    expect(reachCounts('site', 'manage-people')).toBe(true);
  });
});
