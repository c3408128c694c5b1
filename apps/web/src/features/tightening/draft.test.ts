import { describe, expect, test } from 'vitest';
import { type DraftAction, nextPosition, noTaps, type RunningPass, reduceTaps, type Taps } from './draft.ts';
import { finalRound, finishedPass, interruptedPass } from './facts.ts';

const running: RunningPass = {
  kind: 'pass',
  pass: 1,
  stepsDone: 0,
  rounds: 1,
  startedAt: '2027-03-09T07:00:00.000Z',
  performedBy: ['theo', 'mara'],
  tools: { toolId: 'tw-1', pumpId: null, gaugeId: null },
  set: { torque_Nm: 95, asEntered: { value: 95, unit: 'N·m' } },
  gaps_mm: null,
};
const steps = [[1], [3], [2], [4]];
const said = (eventId: string) => ({ eventId, at: '2027-03-09T07:20:00.000Z', clockOffset_ms: 120 });
const through = (actions: readonly DraftAction[], from: Taps = noTaps) => actions.reduce(reduceTaps, from);
const begin: DraftAction = { kind: 'begin', running };
const done: DraftAction = { kind: 'step-done', stepCount: 4 };

describe('taps on the tightening view', () => {
  test('count bolts, and the last one can be taken back', () => {
    expect(through([begin, done, done, { kind: 'undo' }]).running?.stepsDone).toBe(1);
    expect(through([begin, { kind: 'undo' }]).running?.stepsDone).toBe(0);
  });

  test('a double tap on the last bolt counts once', () => {
    expect(through([begin, done, done, done, done, done]).running?.stepsDone).toBe(4);
  });

  test('going round again starts at the first bolt and counts the round', () => {
    const again = through([begin, done, { kind: 'round-again' }]).running;
    expect([again?.stepsDone, again?.rounds]).toEqual([0, 2]);
  });

  test('people and tools of a pass are offered for the next one', () => {
    const after = through([begin, done, { kind: 'drop' }]);
    expect(after.running).toBeNull();
    expect(after.lastPerformedBy).toEqual(['theo', 'mara']);
    expect(after.lastTools?.toolId).toBe('tw-1');
  });
});

describe('what waits to be sent', () => {
  const pass = (number: number, id: string) => finishedPass({ ...running, pass: number }, steps, said(id));
  const two = [pass(1, 'e1'), pass(2, 'e2')];

  test('an interrupted pass says the last bolt in the numbers on the flange, and how many', () => {
    const left = interruptedPass({ ...running, stepsDone: 2 }, steps, 'End of shift', said('e1')).payload;
    expect(left).toMatchObject({ outcome: 'interrupted', lastBolt: 3, boltsDone: 2, why: 'End of shift' });
  });

  test('a finished pass counts every bolt; a final round says that no nut moved in its last round', () => {
    expect(pass(1, 'e1').payload).toMatchObject({ outcome: 'finished', boltsDone: 4, lastBolt: null });
    expect(finalRound({ ...running, rounds: 3 }, said('e2')).payload).toMatchObject({ rounds: 3, nutMoved: false });
  });

  describe('what is tightened next', () => {
    const procedure = { passCount: 3, finalRound: true };
    const recorded = { pass: 1, finalRound: false, repeats: true };

    test('where the record stands, when nothing waits', () => {
      expect(nextPosition(recorded, [], procedure)).toEqual({ kind: 'pass', pass: 1, repeats: true });
      expect(nextPosition(null, [], procedure)).toBeNull();
      expect(nextPosition({ pass: 4, finalRound: true, repeats: false }, [], procedure)?.kind).toBe('final-round');
    });

    test('on top of the record, what this device has done', () => {
      expect(nextPosition(recorded, two, procedure)).toEqual({ kind: 'pass', pass: 3, repeats: false });
      expect(nextPosition(recorded, [pass(3, 'e3')], procedure)?.kind).toBe('final-round');
      expect(nextPosition(recorded, [pass(3, 'e3')], { passCount: 3, finalRound: false })).toBeNull();
    });

    test('an interrupted pass is repeated, a final round ends it', () => {
      const left = interruptedPass({ ...running, pass: 2, stepsDone: 1 }, steps, 'Weather', said('e1'));
      expect(nextPosition(recorded, [left], procedure)).toEqual({ kind: 'pass', pass: 2, repeats: true });
      expect(nextPosition(recorded, [finalRound(running, said('e1'))], procedure)).toBeNull();
    });
  });
});
