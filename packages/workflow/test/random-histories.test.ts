import type { EventType } from '@seatwell/contract';
import { CATALOGUE, foldHistory } from '@seatwell/workflow';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { missingFor } from './support/oracle.ts';
import { begin, type Step, take } from './support/walk.ts';

const RUNS = 1500;
const SEED = 20_270_302;

const fraction = fc.nat({ max: 9_999 }).map((n) => n / 10_000);
const step: fc.Arbitrary<Step> = fc.record({ what: fraction, which: fraction, how: fraction });
const steps = fc.array(step, { minLength: 40, maxLength: 70, size: 'max' });

const accepted = new Map<EventType, number>();
let runs = 0;
let handedOver = 0;
let fullFolds = 0;

const count = (type: EventType) => accepted.set(type, (accepted.get(type) ?? 0) + 1);

function walk(first: Step, rest: readonly Step[]): void {
  const story = begin(first);
  count(story.state.found ? 'joint-found' : 'joint-listed');
  let over = false;
  rest.forEach((next, index) => {
    const type = take(story, next);
    if (type) count(type);
    expect(story.state.version).toBe(story.events.length);
    for (const make of story.state.makes) {
      expect(missingFor(story.state, make, story.events)).toEqual([]);
      over ||= make.stage === 'handed-over';
    }
    if (index % 8 === 7 || index === rest.length - 1) {
      fullFolds += 1;
      expect(foldHistory(story.events)).toEqual(story.state);
    }
  });
  runs += 1;
  if (over) handedOver += 1;
}

describe('random histories of a joint, proposed through the rules', () => {
  beforeAll(() => {
    fc.assert(fc.property(step, steps, walk), { numRuns: RUNS, seed: SEED, endOnFailure: true });
  }, 120_000);

  afterAll(() => {
    const rows = [...accepted].sort((a, b) => b[1] - a[1]).map(([type, n]) => `${String(n).padStart(7)}  ${type}`);
    console.log(
      `${runs} histories, ${handedOver} handed over, ${fullFolds} folded again\naccepted:\n${rows.join('\n')}`,
    );
  });

  it('never reach a stage without those that the work scope demands, and fold the same all at once', () => {
    expect(runs).toBe(RUNS);
    expect(fullFolds).toBeGreaterThan(RUNS);
  });

  it('reach the hand-over in at least one of twenty', () => {
    expect(handedOver / runs).toBeGreaterThanOrEqual(0.05);
  });

  it.each(Object.keys(CATALOGUE) as EventType[])('accept %s at least a hundred times', (type) => {
    expect(accepted.get(type) ?? 0).toBeGreaterThanOrEqual(100);
  });
});
