import type { OperatorStatus, UpkeepRun } from '@seatwell/contract';
import { describe, expect, it } from 'vitest';
import { attentionOf } from './attention.ts';

const run = (kind: UpkeepRun['kind'], endedAt: string, outcome: UpkeepRun['outcome'] = 'ok'): UpkeepRun => ({
  kind,
  outcome,
  startedAt: endedAt,
  endedAt,
  file: null,
  size_bytes: null,
  events: null,
  problems: outcome === 'failed' ? 2 : 0,
  findings: [],
});

const status = (more: Partial<OperatorStatus>): OperatorStatus =>
  ({
    at: '2027-03-09T06:00:00.000Z',
    warnings: [],
    signing: { fingerprint: '4F:1A', unsigned: null },
    upkeep: [run('backup', '2027-03-09T02:00:00.000Z'), run('verification', '2027-03-09T03:00:00.000Z')],
    jobs: { waiting: 0, running: 1, failed: 0, recent: [] },
    signIn: { sessions: 3, locked: [], addresses: [] },
    ...more,
  }) as OperatorStatus;

const whats = (more: Partial<OperatorStatus>) => attentionOf(status(more)).map(({ what }) => what);

describe('a server needs its administrator', () => {
  it('not after a night with backup and verification', () => expect(whats({})).toEqual([]));

  it('while neither was ever run', () =>
    expect(whats({ upkeep: [] })).toEqual(['verification-missing', 'backup-missing']));

  it('when a night was left out', () => {
    const upkeep = [run('backup', '2027-03-08T02:00:00.000Z'), run('verification', '2027-03-09T03:00:00.000Z')];
    expect(attentionOf(status({ upkeep }))).toEqual([{ what: 'backup-old', minutes: 28 * 60 }]);
  });

  it('when a verification found something, however lately', () => {
    const upkeep = [
      run('backup', '2027-03-09T02:00:00.000Z'),
      run('verification', '2027-03-09T05:59:00.000Z', 'failed'),
    ];
    expect(whats({ upkeep })).toEqual(['verification-failed']);
  });

  it('for warnings of the start, unsigned heads, failed jobs and locked accounts', () => {
    const person = { personId: 'p', name: 'Theo' };
    const locked = [{ accountId: 'a', person, email: 'theo@plant.example', lockedUntil: '2027-03-09T06:10:00.000Z' }];
    expect(
      whats({
        warnings: ['One role does everything.'],
        signing: { fingerprint: null, unsigned: 'No key is named.' },
        jobs: { waiting: 0, running: 0, failed: 1, recent: [] },
        signIn: { sessions: 1, locked, addresses: [] },
      }),
    ).toEqual(['warning', 'unsigned', 'failed-jobs', 'locked-shown']);
  });
});
