import { foldHistory, type JointState, type MakeState, mergedWork, type RecordedEvent } from '@seatwell/workflow';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as id from './support/ids.ts';
import { PAYLOADS } from './support/payloads.ts';
import { specification } from './support/register.ts';
import { neighbourListing, type Point, Story, toldTo } from './support/story.ts';
import { begin, take } from './support/walk.ts';

const REGISTER_JOINT = id.uuid(99);
const REGISTER_MAKE = id.uuid(97);

const foundTo = (point: Point): Story => {
  const story = new Story(PAYLOADS['joint-found']);
  return toldTo(point, story.record('joint-specified', { specification, tag: 'F-1', criticality: 'C' }));
};

/** The joint of the register as planned (and perhaps engineered) before anybody knew that the other was it. */
const registered = (point: Point = 'listed'): RecordedEvent[] =>
  toldTo(point, new Story(neighbourListing)).events.map((event) => ({
    ...event,
    eventId: event.eventId.replace('-7000-', '-7111-'),
    jointId: REGISTER_JOINT,
  }));

/** The joint of the register after the found joint was merged into it. */
function merged(found: Story, events: readonly RecordedEvent[], worked = true): JointState {
  const makeId = worked ? found.make().makeId : null;
  const last = Math.max(...found.events.map((event) => event.sequence), ...events.map((event) => event.sequence));
  const merge: RecordedEvent = {
    ...found.events[0]!,
    eventId: id.uuid(5000),
    type: 'joint-merged',
    sequence: last + 1,
    jointId: REGISTER_JOINT,
    makeId: null,
    payload: PAYLOADS['joint-merged'],
    evidence: { merged: mergedWork(found.state, found.events, makeId, REGISTER_MAKE) },
    workTime: found.now,
    reviewCodes: [],
  };
  const state = foldHistory([...events, merge]);
  if (!state) throw new Error('Nothing was folded.');
  return state;
}

/** What was done, apart from what the register planned. */
const done = ({ makeId, number, purpose, workScope, clampedParts, gasket, checkingLevel, ...rest }: MakeState) => {
  const { proof, plannedOn, crewId, packs, cancelled, ...work } = rest;
  return work;
};

describe('a found joint merged with the one of the register', () => {
  it('gives it its work: stage, passes, who and with which tools', () => {
    const found = foundTo('first pass');
    const state = merged(found, registered());
    expect(state).toMatchObject({ tag: 'J-1099', jointId: REGISTER_JOINT, voided: null });
    expect(state.makes).toHaveLength(1);
    expect(state.makes[0]).toMatchObject({ makeId: REGISTER_MAKE, stage: 'part-tight', nextPass: 2 });
    expect(done(state.makes[0]!)).toEqual(done(found.make()));
  });

  it('keeps crew, packs and tag as the register planned them', () => {
    const plan = neighbourListing.makes[0]!;
    expect(merged(foundTo('tight'), registered()).makes[0]).toMatchObject({
      crewId: plan.crewId,
      packs: plan.packs,
      plannedOn: plan.plannedOn,
    });
  });

  it('is told by its temporary number from then on', () => {
    expect(merged(foundTo('open'), registered()).foundAs).toMatchObject([{ jointId: id.JOINT, tag: 'F-1' }]);
  });

  it('what was planned for the make gives way to what was done', () => {
    const found = foundTo('nipped up');
    const state = merged(found, registered('released'));
    expect(state.makes[0]?.superseded).toEqual([]);
    expect(done(state.makes[0]!)).toEqual(done(found.make()));
  });

  it('without work on it, it leaves the plan of the register as it is', () => {
    const state = merged(foundTo('listed'), registered('engineered'), false);
    expect(state.makes[0]).toMatchObject({ stage: 'engineered', waiting: [] });
  });

  it('brings its holds', () => {
    const found = foundTo('open').record('hold-placed');
    expect(merged(found, registered()).holds).toEqual(found.state.holds);
  });

  it('a correction of its work is folded on the joint of the register', () => {
    const found = foundTo('nipped up');
    const nippedUp = found.events.at(-1)!;
    const state = merged(found, registered());
    const correction: RecordedEvent = {
      ...nippedUp,
      eventId: id.uuid(5001),
      type: 'corrected',
      sequence: 9_000,
      jointId: REGISTER_JOINT,
      makeId: REGISTER_MAKE,
      payload: {
        eventId: nippedUp.eventId,
        reason: 'The batch was read wrong',
        payload: { ...PAYLOADS['nipped-up'], gasket: { ...PAYLOADS['nipped-up'].gasket, batch: 'GB-77' } },
      },
    };
    expect(state.makes[0]?.fitted?.batch).not.toBe('GB-77');
    const merge = { makeId: found.make().makeId };
    const again = foldHistory([
      ...registered(),
      {
        ...correction,
        eventId: id.uuid(5000),
        type: 'joint-merged',
        sequence: 8_000,
        makeId: null,
        payload: PAYLOADS['joint-merged'],
        evidence: { merged: mergedWork(found.state, found.events, merge.makeId, REGISTER_MAKE) },
      },
      correction,
    ]);
    expect(again?.makes[0]?.fitted?.batch).toBe('GB-77');
  });

  const fraction = fc.nat({ max: 9_999 }).map((n) => n / 10_000);
  const step = fc.record({ what: fraction, which: fraction, how: fraction });

  it('whatever its history, the make of the register stands where the found make stood', () => {
    fc.assert(
      fc.property(step, fc.array(step, { minLength: 10, maxLength: 40 }), (first, rest) => {
        const found = begin({ ...first, what: first.what * 0.15 });
        for (const next of rest) {
          // The walk of a found joint up to its merge: joint-merged itself is what follows.
          if (!found.state.voided) take(found, { ...next, what: next.what * 0.9 });
        }
        if (found.state.voided || found.state.makes.length > 1) return;
        const make = merged(found, registered()).makes[0]!;
        expect(done(make)).toEqual(done(found.make()));
      }),
      { numRuns: 200 },
    );
  });
});
