import { computedPasses, passCountOf, restartFrom, type TargetEvidence, upcast } from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';
import { PAYLOADS } from './support/payloads.ts';
import { targetEvidence } from './support/register.ts';
import { type Story, toldTo } from './support/story.ts';

const steps = Array.from({ length: 8 }, (_, index) => ({ bolt: index + 1, setValue: index < 4 ? 1 : 0 }));
const target: TargetEvidence = {
  ...targetEvidence,
  tightening: {
    way: 'computed-loads',
    toolDivision_Nm: 5,
    cap_percent: 140,
    capGovernedBy: 'bolt-yield',
    passes: [
      { level_percent: 90, setValues_Nm: [250, 320], steps },
      { level_percent: 100, setValues_Nm: [240, 265], steps },
    ],
    final: { min: 97, mean: 100, max: 103 },
    band: { min: 88, max: 112 },
    tilt_mm: 1.2,
    usualTilt_mm: 0.6,
    moves: 16,
    movesSaved: 36,
    passesSaved: 3,
  },
};
const set = (torque_Nm: number) => ({ set: { torque_Nm, asEntered: { value: torque_Nm, unit: 'N·m' } } });

/** Nipped up, with computed loads chosen in place of the three passes of its procedure. */
const nippedUp = (): Story =>
  toldTo('procedure assigned')
    .record('target-approved', {}, { around: { newTarget: target }, evidence: { target } })
    .record('break-released')
    .record('opened')
    .record('faces-inspected')
    .record('nipped-up');

describe('a target with computed loads', () => {
  it('has the passes of its plan, not those of the procedure', () => {
    const make = nippedUp().make();
    expect(passCountOf(make)).toBe(2);
    expect(computedPasses(make)).toHaveLength(2);
    expect(passCountOf(toldTo('engineered').make())).toBe(3);
  });

  it('goes on to the final round after its last pass, and only then', () => {
    const story = nippedUp().pass(1, set(320));
    expect(story.propose('final-round-recorded', story.sound('final-round-recorded'))).toMatchObject({
      outcome: 'refuse',
      failed: [{ code: 'tight.passes-first' }],
    });
    story.pass(2, set(265));
    expect(restartFrom(story.make())).toMatchObject({ pass: 3, finalRound: true });
    expect(story.record('final-round-recorded').make().stage).toBe('tight');
  });

  it.each([250, 320, 310])('takes a pass with %i N·m, near one of its set values', (torque) => {
    expect(nippedUp().pass(1, set(torque)).make().nextPass).toBe(2);
  });

  it.each([72, 285, 338])('asks for a reason where %i N·m was set, near none', (torque) => {
    const story = nippedUp();
    const payload = { ...story.sound('pass-recorded'), ...set(torque) };
    expect(story.propose('pass-recorded', payload)).toMatchObject({
      failed: [{ code: 'passes.set-as-target', limit: '250, 320 N·m ± 5 %' }],
    });
  });

  it('its final round is at the target', () => {
    const story = nippedUp().pass(1, set(320)).pass(2, set(265));
    expect(
      story.propose('final-round-recorded', { ...story.sound('final-round-recorded'), ...set(320) }),
    ).toMatchObject({ failed: [{ code: 'passes.set-as-target' }] });
  });
});

describe('a target of the version before', () => {
  it('is read as it was written: tightened by its procedure', () => {
    expect(upcast('target-approved', 1, PAYLOADS['target-approved'])).toEqual(PAYLOADS['target-approved']);
  });
});
