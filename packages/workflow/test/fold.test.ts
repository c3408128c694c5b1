import {
  foldHistory,
  foldJoint,
  needsFullFold,
  type RecordedEvent,
  restartFrom,
  temporaryFittingOf,
} from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';
import * as id from './support/ids.ts';
import { PAYLOADS } from './support/payloads.ts';
import { listing, plan } from './support/register.ts';
import { Story, toldTo } from './support/story.ts';
import { tools } from './support/world.ts';

const next = { makeId: id.NEXT_MAKE };
const uncalibrated = { tools: { ...tools, [id.WRENCH]: { ...tools[id.WRENCH]!, calibrations: [] } } };
const named = (story: Story, type: string) => ({ eventId: story.events.findLast((e) => e.type === type)!.eventId });

describe('an interrupted joint', () => {
  it('is part tight, says who left it where, and repeats the pass', () => {
    const story = toldTo('first pass').pass(2, { outcome: 'interrupted', boltsDone: 5, lastBolt: 5, why: 'Rain' });
    expect(story.make().partTight).toMatchObject({
      pass: 2,
      lastBolt: 5,
      boltsDone: 5,
      leftBy: [id.ANA, id.BEN],
      why: 'Rain',
      restartPass: 2,
    });
    expect(restartFrom(story.make())).toMatchObject({ pass: 2, repeats: true, finalRound: false });
    expect(story.pass(2).make().nextPass).toBe(3);
  });
});

describe('going back', () => {
  it('a rejected check leaves it tight and rejected until it is tightened again', () => {
    const rejected = toldTo('tight').record('checked', { outcome: 'rejected', reason: 'Nut unmarked' });
    expect(rejected.make()).toMatchObject({ stage: 'tight', rejected: true, checkedAt: null });
    rejected.pass(3).record('final-round-recorded');
    expect(rejected.make()).toMatchObject({ stage: 'tight', rejected: false });
    expect(rejected.record('checked').make().stage).toBe('checked');
  });

  it.each(['checked', 'proven', 'handed over'] as const)('a leak found when %s takes it back to tight', (point) => {
    const make = toldTo(point).record('leak-found').make();
    expect(make).toMatchObject({
      stage: 'tight',
      leaking: true,
      underPressure: true,
      provenAt: null,
      handedOverAt: null,
    });
  });

  it('after its proof the bolts are touched only once operations has released it again', () => {
    const story = toldTo('proven');
    const refused = { outcome: 'refuse', failed: [{ code: 'make.pressure-off' }] };
    expect(story.propose('loosened', PAYLOADS.loosened)).toMatchObject(refused);
    expect(story.record('break-released').record('loosened').make().stage).toBe('part-tight');
  });

  it('a leak under pressure in a new joint is released and tightened again', () => {
    const story = new Story({ ...listing, makes: [{ ...plan, workScope: 'new' }] })
      .record('procedure-assigned')
      .record('target-approved')
      .record('faces-inspected')
      .record('nipped-up')
      .pass(1)
      .record('leak-found');
    expect(story.propose('pass-recorded', story.sound('pass-recorded'))).toMatchObject({ outcome: 'refuse' });
    expect(story.record('break-released').pass(2).make()).toMatchObject({ stage: 'part-tight', leaking: false });
  });

  it('a leak ends what was witnessed: the tightening that repairs it is another', () => {
    const story = toldTo('tight').record('witnessed');
    expect(story.record('leak-found').make().witnessed).toEqual([]);
  });

  it('a procedure revoked between the passes is replaced, and the passes go on', () => {
    const story = toldTo('first pass');
    story.record('revoked', named(story, 'procedure-assigned'));
    expect(story.make()).toMatchObject({ stage: 'part-tight', procedure: null, target: null, nextPass: 2 });
    expect(story.record('procedure-assigned').record('target-approved').pass(2).make().nextPass).toBe(3);
  });

  it('a leak in a joint that is not tight yet does not make it tight', () => {
    expect(toldTo('first pass').record('leak-found').make()).toMatchObject({ stage: 'part-tight', leaking: true });
  });

  it('some loosened bolts leave it part tight from the first pass on', () => {
    const make = toldTo('checked').record('loosened').make();
    expect(make).toMatchObject({ stage: 'part-tight', nextPass: 1, checkedAt: null, retighten: false });
  });

  it('all bolts loosened leave it nipped up, to be retightened with its used gasket', () => {
    const make = toldTo('tight').record('loosened', { extent: 'all' }).make();
    expect(make).toMatchObject({ stage: 'nipped-up', nextPass: 1, retighten: true, partTight: null });
    expect(make.fitted).not.toBeNull();
  });

  it('a replaced stud leaves it part tight with the last pass to repeat', () => {
    expect(toldTo('checked').record('stud-replaced').make()).toMatchObject({
      stage: 'part-tight',
      nextPass: 3,
      studsReplaced: [3],
      checkedBy: null,
    });
  });

  it('opened again before it was tight, it has no gasket and no passes any more', () => {
    expect(toldTo('first pass').record('opened').make()).toMatchObject({
      stage: 'open',
      fitted: null,
      passes: [],
      facesAcceptedAt: null,
    });
  });

  it('rejected faces leave it open', () => {
    const story = toldTo('faces accepted').record('faces-inspected', { accepted: false });
    expect(story.make()).toMatchObject({ stage: 'open', facesAcceptedAt: null });
  });

  it('taken back, it is proven and not handed over', () => {
    expect(toldTo('handed over').record('taken-back').make()).toMatchObject({ stage: 'proven', handedOverAt: null });
  });
});

describe('two makes of one joint', () => {
  const spaded = () =>
    new Story({
      ...listing,
      makes: [
        { ...plan, purpose: 'spade-in' },
        { ...plan, ...next, number: 2 },
      ],
    });
  const spadeIn = () =>
    toldTo('faces accepted', spaded())
      .record('nipped-up', { gasket: { ...PAYLOADS['nipped-up'].gasket, purpose: 'spade-in' } })
      .pass(1)
      .pass(2)
      .pass(3)
      .record('final-round-recorded');
  const release = (story: Story) =>
    story.record('procedure-assigned', {}, next).record('target-approved', {}, next).record('break-released', {}, next);

  it('counts the temporary gasket until the next make is opened', () => {
    const story = release(spadeIn());
    expect(temporaryFittingOf(story.state)).toMatchObject({ makeId: id.MAKE, gasket: true, bolts: false });
    story.record('opened', {}, next);
    expect(temporaryFittingOf(story.state)).toBeNull();
    expect(story.make(id.NEXT_MAKE).stage).toBe('open');
  });

  it('keeps the first make as history: nothing more is recorded on it', () => {
    const story = release(spadeIn()).record('opened', {}, next);
    expect(story.propose('checked', PAYLOADS.checked)).toMatchObject({
      outcome: 'refuse',
      failed: [{ code: 'make.in-work' }],
    });
  });

  it('opens a joint after its test on another make', () => {
    const story = toldTo('proven');
    expect(story.propose('opened', PAYLOADS.opened)).toMatchObject({ outcome: 'refuse' });
    story.record('make-planned', { ...plan, ...next, number: 2 });
    release(story).record('opened', {}, next);
    expect(story.state.makes.map(({ stage }) => stage)).toEqual(['proven', 'open']);
  });
});

describe('facts that arrive late', () => {
  it('count at the time when the work was done', () => {
    const story = toldTo('listed');
    const opened = toldTo('open').events.find((e) => e.type === 'opened')!;
    const events = toldTo('faces accepted').events;
    // The phone with the opening was offline: its event came last, the faces were known first.
    const late = events.map((e): RecordedEvent => (e.type === 'opened' ? { ...e, sequence: events.length + 5 } : e));
    expect(foldHistory(late)?.makes[0]?.stage).toBe('faces-accepted');
    const before = foldHistory(late.filter((e) => e.type !== 'opened'))!;
    expect(before.makes[0]).toMatchObject({ stage: 'released' });
    expect(before.makes[0]?.waiting).toMatchObject([{ type: 'faces-inspected', codes: ['faces.open-first'] }]);
    expect(needsFullFold(before, { ...opened, workTime: '2027-03-02T08:00:00.000Z' })).toBe(true);
    expect(story.state.version).toBe(1);
  });

  it('take a check with them that no longer stands on a tight joint', () => {
    const story = toldTo('checked');
    const { checkedAt } = story.make();
    const at = new Date(Date.parse(checkedAt!) - 30 * 60_000).toISOString();
    // The rules see the state of now, and a checked joint may be loosened.
    expect(story.propose('loosened', PAYLOADS.loosened, { at }).outcome).toBe('accept');
    expect(story.make()).toMatchObject({ stage: 'part-tight', checkedAt: null });
    expect(story.make().superseded.map(({ type }) => type)).toEqual(['checked']);
  });
});

describe('a fact in review', () => {
  const inReview = () => {
    const story = toldTo('nipped up');
    const decision = story.propose('pass-recorded', story.sound('pass-recorded'), {
      alreadyDone: true,
      around: uncalibrated,
    });
    expect(decision).toMatchObject({ outcome: 'needs-review', codes: ['passes.tool-calibrated'] });
    return story;
  };

  it('does not move the make, and what depends on it waits behind it', () => {
    const story = inReview();
    const first = named(story, 'pass-recorded').eventId;
    const second = { ...story.sound('pass-recorded'), pass: 2 };
    expect(story.propose('pass-recorded', second, { alreadyDone: true }).outcome).toBe('needs-review');
    expect(story.make()).toMatchObject({ stage: 'nipped-up', passes: [] });
    expect(story.make().waiting).toMatchObject([
      { eventId: first, behind: null, missing: null },
      { type: 'pass-recorded', behind: first },
    ]);
  });

  it('moves it once accepted', () => {
    const story = inReview();
    story.record('review-settled', named(story, 'pass-recorded'));
    expect(story.make()).toMatchObject({ stage: 'part-tight', nextPass: 2, waiting: [] });
  });

  it('is as if it had never been once rejected as not done', () => {
    const story = inReview();
    story.record('review-settled', { ...named(story, 'pass-recorded'), outcome: 'reject-as-not-done' });
    expect(story.make()).toMatchObject({ stage: 'nipped-up', passes: [], waiting: [] });
  });
});

describe('corrections and revocations', () => {
  it('a correction under a signature supersedes it: the stage falls back before it', () => {
    const story = toldTo('checked');
    const pass = story.events.find((e) => e.type === 'pass-recorded')!;
    const payload = { ...(pass.payload as object), boltsDone: 8, why: 'Wrench TW-1, not TW-2' };
    story.record('corrected', { eventId: pass.eventId, payload });
    expect(story.make()).toMatchObject({ stage: 'tight', superseded: [{ type: 'checked' }] });
    expect(story.make().passes[0]?.why).toBe('Wrench TW-1, not TW-2');
    expect(story.record('checked').make().stage).toBe('checked');
  });

  it('a correction that unmakes what followed leaves the rest waiting', () => {
    const story = toldTo('nipped up');
    const faces = story.events.find((e) => e.type === 'faces-inspected')!;
    story.record('corrected', {
      eventId: faces.eventId,
      payload: { ...(faces.payload as object), accepted: false },
    });
    expect(story.make()).toMatchObject({ stage: 'open', fitted: null });
    expect(story.make().waiting).toMatchObject([{ type: 'nipped-up', codes: ['nipped-up.faces-first'] }]);
  });

  it('a revoked check and proof fall back before the check', () => {
    const story = toldTo('proven');
    story.record('revoked', named(story, 'checked'));
    expect(story.make()).toMatchObject({ stage: 'tight', superseded: [{ type: 'proven' }] });
  });

  it('a revoked target leaves an open joint open, and an engineered one planned', () => {
    const engineered = toldTo('engineered');
    expect(engineered.record('revoked', named(engineered, 'target-approved')).make()).toMatchObject({
      stage: 'planned',
      target: null,
    });
    const open = toldTo('open');
    expect(open.record('revoked', named(open, 'target-approved')).make()).toMatchObject({
      stage: 'open',
      target: null,
    });
  });

  it('a revoked void brings the joint back', () => {
    const story = toldTo('released').record('joint-voided');
    expect(story.state.voided).toMatchObject({ why: 'not-found' });
    expect(story.record('revoked', named(story, 'joint-voided')).state.voided).toBeNull();
  });
});

describe('the register of a joint', () => {
  it('holds are placed and released by their own id', () => {
    const story = toldTo('open')
      .record('hold-placed')
      .record('hold-placed', { holdId: id.uuid(70) });
    expect(story.state.holds).toHaveLength(2);
    expect(story.record('hold-released').state.holds.map((h) => h.holdId)).toEqual([id.uuid(70)]);
  });

  it('a found joint is worked as critical until it is specified', () => {
    const story = new Story(PAYLOADS['joint-found']);
    expect(story.state).toMatchObject({ tag: 'X-1', criticality: 'A', bolting: null, found: { nearest: 'V-14' } });
    story.record('joint-specified', { specification: listing.specification, tag: 'J-1001', criticality: 'C' });
    expect(story.state).toMatchObject({ tag: 'J-1001', criticality: 'C', bolting: { count: 8 } });
    expect(story.record('joint-merged').state.voided).toMatchObject({ why: 'merged', intoJointId: id.uuid(99) });
  });

  it('specifying a part of it leaves the rest', () => {
    const story = new Story().record('joint-specified', { whereabouts: { line: '6"-P-9' } });
    expect(story.state.whereabouts).toMatchObject({ line: '6"-P-9', bolt1At: 'top' });
  });

  it('assigning a make leaves its level of checking unless it is given', () => {
    const story = new Story().record('make-assigned', { checkingLevel: 'every' }).record('make-assigned');
    expect(story.make().checkingLevel).toBe('every');
    expect(story.record('make-cancelled').make().cancelled).toBe(true);
  });
});

describe('the fold', () => {
  it('has nothing to fold in an empty history', () => {
    expect(foldHistory([])).toBeNull();
  });

  it('refuses a joint that begins neither listed nor found', () => {
    const [, second] = toldTo('released').events;
    expect(() => foldJoint(null, second!)).toThrow(/begins by being listed or found/);
  });

  it('asks for the whole history where an event changes what came before', () => {
    const story = toldTo('checked');
    const event = { ...story.events[0]!, type: 'revoked', payload: PAYLOADS.revoked };
    expect(() => foldJoint(story.state, event)).toThrow(/fold the whole history/);
  });

  it('does not depend on the order in which events are given', () => {
    const story = toldTo('handed over');
    expect(foldHistory([...story.events].reverse())).toEqual(story.state);
  });

  it('compares times as moments, whatever their offset', () => {
    const story = toldTo('tight');
    const event = { ...story.events.at(-1)!, type: 'witnessed', payload: PAYLOADS.witnessed };
    const same = (workTime: string) => needsFullFold(story.state, { ...event, workTime });
    const last = Date.parse(story.make().lastEventAt!);
    const inOslo = (ms: number) => new Date(ms + 3_600_000).toISOString().replace('Z', '+01:00');
    expect(same(inOslo(last))).toBe(false);
    expect(same(inOslo(last - 1))).toBe(true);
  });
});
