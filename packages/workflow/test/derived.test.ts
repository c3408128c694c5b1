import { WORK_SCOPES } from '@seatwell/contract';
import {
  currentMake,
  DEFAULT_SETTINGS,
  drawSample,
  facesOf,
  failedTools,
  flagsOf,
  nextStep,
  restartFrom,
  stagesFor,
  waitsFor,
  whyMeasured,
} from '@seatwell/workflow';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as id from './support/ids.ts';
import { PAYLOADS } from './support/payloads.ts';
import { listing, plan, specification, targetEvidence } from './support/register.ts';
import { type Point, Story, toldTo } from './support/story.ts';
import { tools } from './support/world.ts';

const waiting = (story: Story) => waitsFor(story.state, story.make(), DEFAULT_SETTINGS, story.now);
const flags = (story: Story, around: object = {}) =>
  flagsOf(story.state, story.make(), {
    now: story.now,
    settings: DEFAULT_SETTINGS,
    tools,
    targetInputsHashNow: targetEvidence.inputsHash,
    unclosedPunch: {},
    ...around,
  }).map(({ code }) => code);
const critical = () => new Story({ ...listing, criticality: 'A' });

describe('what a make waits for', () => {
  it.each([
    ['listed', 'procedure', 'engineer'],
    ['procedure assigned', 'target', 'engineer'],
    ['engineered', 'release', 'operations'],
    ['released', 'opening', 'technician'],
    ['open', 'faces', 'technician'],
    ['faces accepted', 'nip-up', 'technician'],
    ['nipped up', 'pass', 'technician'],
    ['first pass', 'pass', 'technician'],
    ['every pass', 'final-round', 'technician'],
    ['tight', 'check', 'chargehand'],
    ['checked', 'proof', 'inspector'],
    ['proven', 'hand-over', 'coordinator'],
    ['offered', 'taking-over', 'operations'],
    ['handed over', 'nothing', null],
  ] as const)('%s: %s by %s', (point: Point, code, by) => {
    expect(waiting(toldTo(point))).toMatchObject({ code, by });
  });

  it('names the pass that is next', () => {
    expect(waiting(toldTo('first pass')).data).toEqual({ pass: 2, of: 3 });
  });

  it('faces again once their acceptance has lapsed', () => {
    expect(waiting(toldTo('faces accepted').wait(24)).code).toBe('faces-again');
  });

  it('on a critical joint the witness, then QC, then the relaxation pass', () => {
    const story = toldTo('tight', critical());
    expect(waiting(story)).toMatchObject({ code: 'witness', by: 'witness' });
    expect(waiting(story.record('witnessed'))).toMatchObject({
      code: 'check',
      by: 'inspector',
      data: { level: 'every' },
    });
    expect(waiting(story.wait(4))).toMatchObject({ code: 'relaxation-pass' });
  });

  it('a hold before anything else of its stage, and a leak under pressure waits for operations', () => {
    expect(waiting(toldTo('open').record('hold-placed'))).toMatchObject({ code: 'hold', by: 'engineer' });
    expect(waiting(toldTo('proven').record('leak-found'))).toMatchObject({ code: 'repair', by: 'operations' });
  });

  it('nothing on a void joint', () => {
    expect(waiting(toldTo('released').record('joint-voided')).code).toBe('nothing');
  });
});

describe('flags beside the stage', () => {
  it('none on a sound joint', () => {
    expect(flags(toldTo('checked'))).toEqual([]);
  });

  it('part tight, on hold, leaking, rejected, to be retightened', () => {
    expect(flags(toldTo('first pass'))).toEqual(['part-tight']);
    expect(flags(toldTo('open').record('hold-placed'))).toEqual(['on-hold']);
    expect(flags(toldTo('proven').record('leak-found'))).toEqual(['leaking']);
    expect(flags(toldTo('tight').record('checked', { outcome: 'rejected', reason: 'Loose nut' }))).toEqual([
      'rejected',
    ]);
    expect(flags(toldTo('tight').record('loosened', { extent: 'all' }))).toEqual(['retighten']);
  });

  it('a target is out of date only when an input of it has changed', () => {
    expect(flags(toldTo('open'), { targetInputsHashNow: 'd'.repeat(64) })).toEqual(['target-out-of-date']);
    expect(flags(toldTo('open'), { targetInputsHashNow: null })).toEqual([]);
  });

  it('a relaxation pass is due, then overdue, then done', () => {
    const story = toldTo('tight', critical());
    expect(flags(story)).toEqual(['relaxation-due']);
    expect(flags(story.wait(24))).toEqual(['relaxation-overdue']);
    expect(flags(story.record('relaxation-pass-recorded'))).toEqual([]);
  });

  it('a provisional tool until its calibration is cleared', () => {
    const calibrations = [{ toolId: id.WRENCH, calibrationId: id.uuid(94), provisional: true }];
    const story = toldTo('nipped up').pass(1, {}, { evidence: { calibrations } });
    const provisional = (clearedAt: string | null) => ({
      tools: {
        ...tools,
        [id.WRENCH]: {
          ...tools[id.WRENCH]!,
          calibrations: [{ ...tools[id.WRENCH]!.calibrations[0]!, provisional: true, clearedAt }],
        },
      },
    });
    expect(flags(story, provisional(null))).toEqual(['part-tight', 'provisional-tool']);
    expect(flags(story, provisional('2027-03-03T09:00:00.000Z'))).toEqual(['part-tight']);
    expect(flags(story, { tools: {} })).toContain('provisional-tool');
  });

  it('a tool found wrong, if it worked since its last good calibration, until its passes are made again', () => {
    const wrench = tools[id.WRENCH]!;
    const found = (failedOn: string, more: typeof wrench.calibrations = []) => ({
      tools: { ...tools, [id.WRENCH]: { ...wrench, failedOn, calibrations: [...wrench.calibrations, ...more] } },
    });
    const story = toldTo('tight');
    const worked = story.make().passes[0]!.endedAt.slice(0, 10);
    const later = '2027-12-01';
    expect(flags(story)).toEqual([]);
    expect(flags(story, found(later))).toEqual(['tool-failed']);
    expect(flags(toldTo('nipped up'), found(later))).toEqual([]);
    const again = { ...wrench.calibrations[0]!, calibrationId: id.uuid(95), calibratedOn: '2027-11-01' };
    expect(worked < again.calibratedOn).toBe(true);
    expect(flags(story, found(later, [again]))).toEqual([]);
    expect(flags(story, found(later, [{ ...again, provisional: true, clearedAt: null }]))).toEqual(['tool-failed']);
    // A calibration made after it was found wrong says nothing about the work before.
    expect(flags(story, found('2027-10-01', [again]))).toEqual(['tool-failed']);
    // Mended and calibrated anew before it was used here: what was wrong with it was wrong with other work.
    const mended = { ...again, calibratedOn: '2027-02-15' };
    expect(flags(story, found('2027-02-01', [mended]))).toEqual([]);
    const { passes } = story.make();
    const madeAgain = [...passes, ...passes.map((pass) => ({ ...pass, toolId: id.uuid(96) }))];
    expect(failedTools(story.make(), found(later).tools)).toEqual([id.WRENCH]);
    expect(failedTools({ ...story.make(), passes: madeAgain }, found(later).tools)).toEqual([]);
  });

  it('a temporary gasket, an implausible record, unclosed punch items', () => {
    const spaded = new Story({ ...listing, makes: [{ ...plan, purpose: 'spade-in' }] });
    const gasket = { ...PAYLOADS['nipped-up'].gasket, purpose: 'spade-in' as const };
    const story = toldTo('faces accepted', spaded).record('nipped-up', { gasket });
    expect(flags(story, { unclosedPunch: { A: 1, C: 2 } })).toEqual(['temporary-fitting', 'punch-A', 'punch-C']);
    const fast = toldTo('nipped up').record('pass-recorded', {
      ...toldTo('nipped up').sound('pass-recorded'),
      startedAt: toldTo('nipped up').now,
    });
    expect(flags(fast)).toEqual(['part-tight', 'implausible']);
  });
});

describe('what comes next', () => {
  it('offers what has its place, and no more', () => {
    expect(nextStep(toldTo('open').make())).toEqual(
      expect.arrayContaining(['faces-inspected', 'leak-found', 'procedure-assigned']),
    );
    expect(nextStep(toldTo('open').make())).not.toEqual(expect.arrayContaining(['nipped-up']));
    expect(nextStep(toldTo('every pass').make())).toContain('final-round-recorded');
    expect(nextStep(toldTo('released').record('make-cancelled').make())).toEqual([]);
  });

  it('says where tightening begins: nowhere on an open joint, at the final round after the passes', () => {
    expect(restartFrom(toldTo('open').make())).toBeNull();
    expect(restartFrom(toldTo('nipped up').make())).toMatchObject({ pass: 1, finalRound: false, repeats: false });
    expect(restartFrom(toldTo('every pass').make())).toMatchObject({ pass: 4, finalRound: true });
    expect(restartFrom(toldTo('proven').record('leak-found').make())).toMatchObject({ pass: 1 });
  });
});

describe('the stack', () => {
  it('has two faces to each gasket', () => {
    const parts = (['flange', 'gasket', 'spade', 'gasket', 'flange'] as const).map((kind) => ({
      kind,
      thickness_mm: null,
      note: null,
    }));
    const insert = new Story({ ...listing, specification: { ...specification, clampedParts: parts } });
    expect(facesOf(insert.state, insert.make())).toBe(4);
    expect(facesOf(new Story().state, new Story().make())).toBe(2);
  });

  it('asks for measured faces on girth joints, large flanges, leakers, critical joints and unknown sizes', () => {
    const why = (change: object) =>
      whyMeasured({ joint: new Story({ ...listing, ...change }).state, settings: DEFAULT_SETTINGS });
    const sized = (size: string) => ({
      specification: { ...specification, flange: { ...specification.flange, size } },
    });
    expect(why({})).toEqual([]);
    expect(why({ kind: 'girth' })).toEqual(['a girth joint']);
    expect(why(sized('NPS24'))).toEqual(['a large flange (DN 600)']);
    expect(why(sized('DN500'))).toEqual([]);
    expect(why(sized(''))).toEqual(['its size is not known']);
    expect(why({ criticality: 'A' })).toEqual(['criticality A']);
    const leaker = toldTo('tight').record('leak-found');
    expect(whyMeasured({ joint: leaker.state, settings: DEFAULT_SETTINGS })).toEqual(['it has leaked']);
  });

  it('is in its first make before any work, and in the last one begun after', () => {
    const two = new Story({ ...listing, makes: [plan, { ...plan, makeId: id.NEXT_MAKE, number: 2 }] });
    expect(currentMake(two.state)?.number).toBe(1);
    expect(currentMake(toldTo('open', two).state)?.number).toBe(1);
  });
});

describe('work scopes', () => {
  it.each(WORK_SCOPES)('%s begins planned and ends handed over, each stage once', (scope) => {
    const stages = stagesFor(scope);
    expect(stages[0]).toBe('planned');
    expect(stages.at(-1)).toBe('handed-over');
    expect(new Set(stages).size).toBe(stages.length);
  });
});

describe('the sample of a lot', () => {
  const lots = fc.uniqueArray(fc.uuid(), { minLength: 1, maxLength: 60 });

  it('is the same whatever the order of the lot, of the share rounded up, and of the lot', () => {
    fc.assert(
      fc.property(lots, fc.integer({ min: 1, max: 100 }), fc.string(), (lot, percent, seed) => {
        const drawn = drawSample(lot, percent / 100, seed);
        expect(drawSample([...lot].reverse(), percent / 100, seed)).toEqual(drawn);
        expect(drawn).toHaveLength(Math.ceil((lot.length * percent) / 100));
        for (const makeId of drawn) expect(lot).toContain(makeId);
      }),
      { seed: 7 },
    );
  });

  it('changes with the seed, and gives each make its turn', () => {
    const lot = Array.from({ length: 10 }, (_, n) => id.uuid(n));
    const turns = new Map<string, number>();
    for (let seed = 0; seed < 2000; seed += 1)
      for (const makeId of drawSample(lot, 0.1, String(seed))) turns.set(makeId, (turns.get(makeId) ?? 0) + 1);
    expect(turns.size).toBe(10);
    for (const count of turns.values()) expect(count).toBeGreaterThan(140);
  });

  it('of a share out of range is refused', () => {
    expect(() => drawSample([id.MAKE], 0, 's')).toThrow(RangeError);
    expect(() => drawSample([id.MAKE], Number.NaN, 's')).toThrow(RangeError);
  });
});
