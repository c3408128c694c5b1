import type { EventType, JointSpecification, Payload } from '@seatwell/contract';
import { DEFAULT_SETTINGS, type PackContext, type RuleContext, type RuleQuestion } from '@seatwell/workflow';
import * as id from './ids.ts';
import { PAYLOADS } from './payloads.ts';
import { listing, plan, procedureContent, specification, targetEvidence } from './register.ts';
import { type Choices, type Point, Story, toldTo, torque } from './story.ts';
import { surroundings, timesAt, tools } from './world.ts';

export interface Asked {
  readonly question: RuleQuestion;
  readonly context: RuleContext;
}

/** A rule in its two cases: the situation that it stops, and the same once its remedy was applied. */
export interface RuleCase {
  readonly fires: () => Asked;
  readonly satisfied: () => Asked;
}

export interface PackCase {
  readonly fires: () => { readonly question: RuleQuestion; readonly context: PackContext };
  readonly satisfied: () => { readonly question: RuleQuestion; readonly context: PackContext };
}

function ask<T extends EventType>(
  story: Story,
  type: T,
  change: Partial<Payload<T>> = {},
  around: Partial<RuleContext> = {},
  choices: Choices = {},
): Asked {
  const payload = { ...story.sound(type), ...change };
  return { question: { type, payload }, context: story.context(type, payload, { ...choices, around }) };
}

interface Variant<T extends EventType> {
  /** the story told otherwise */
  readonly story?: () => Story;
  readonly change?: Partial<Payload<T>>;
  readonly around?: Partial<RuleContext>;
  readonly choices?: Choices;
}

/** The sound event at a point satisfies the rule; the variant fires it. */
function at<T extends EventType>(point: Point, type: T, fires: Variant<T>, sound: Variant<T> = {}): RuleCase {
  const tell = (variant: Variant<T>) => () =>
    ask(
      (variant.story ?? sound.story ?? (() => toldTo(point)))(),
      type,
      { ...sound.change, ...variant.change },
      { ...sound.around, ...variant.around },
      variant.choices ?? sound.choices,
    );
  return { fires: tell(fires), satisfied: tell(sound) };
}

const content = procedureContent;
const withProcedure = (change: Partial<typeof content>, facts: object = {}): Partial<RuleContext> => ({
  procedure: { ...surroundings.procedure!, content: { ...content, ...change }, ...facts },
});
const withScope = (change: Partial<typeof content.appliesTo>) =>
  withProcedure({ appliesTo: { ...content.appliesTo, ...change } });
const withPack = (change: Partial<NonNullable<RuleContext['pack']>>): Partial<RuleContext> => ({
  pack: { ...surroundings.pack!, ...change },
});
const withSystem = (change: Partial<NonNullable<RuleContext['system']>>): Partial<RuleContext> => ({
  system: { ...surroundings.system!, ...change },
});
const withRelease = (change: object) => withPack({ released: { ...surroundings.pack!.released!, ...change } });
const withTool = (toolId: string, change: object): Partial<RuleContext> => ({
  tools: { ...tools, [toolId]: { ...tools[toolId]!, ...change } },
});
const withPermit = (change: object): Partial<RuleContext> => ({
  permits: [{ ...surroundings.permits[0]!, ...change }],
});
const unqualified = (personId: string): Partial<RuleContext> => ({
  persons: { ...surroundings.persons, [personId]: { ...surroundings.persons[personId]!, qualifications: [] } },
});

const specified = (change: Partial<JointSpecification>, more: Partial<typeof listing> = {}) =>
  new Story({ ...listing, ...more, specification: { ...specification, ...change } });
const ofCriticality = (criticality: 'A' | 'B') => new Story({ ...listing, criticality });
const gasket = (change: object) => ({ gasket: { ...PAYLOADS['nipped-up'].gasket, ...change } });
const bolting = (change: object) => ({ bolting: { ...PAYLOADS['nipped-up'].bolting, ...change } });
const alignment = (change: object) => ({ alignment: { ...PAYLOADS['nipped-up'].alignment, ...change } });
const faces = (change: object) => ({
  faces: PAYLOADS['faces-inspected'].faces.map((face) => ({ ...face, ...change })),
});
const hydraulic = { toolId: id.HYDRAULIC_WRENCH, pumpId: id.PUMP, gaugeId: id.PUMP_GAUGE };
const setTo = (torque_Nm: number) => ({ set: torque(torque_Nm) });
const byQuality = { level: 'every' } as const;

const onHold = (point: Point) => () => toldTo(point).record('hold-placed');
const leaking = () => toldTo('tight').record('leak-found');
const releasedAgain = () => leaking().record('break-released');
const hotFibre = (hotExposed: boolean) => {
  const story = specified({ hotExposed, gasket: { ...specification.gasket, family: 'fibre-sheet', detail: null } }, {});
  const target = { ...targetEvidence, gasketFamily: 'fibre-sheet' };
  const scope = withScope({ gasketFamilies: [] });
  return story
    .record('procedure-assigned', {}, { around: scope })
    .record('target-approved', {}, { around: { newTarget: target }, evidence: { target } })
    .record('break-released')
    .record('opened')
    .record('faces-inspected')
    .record('nipped-up', gasket({ family: 'fibre-sheet', detail: null }))
    .pass(1)
    .pass(2)
    .pass(3)
    .record('final-round-recorded')
    .wait(5);
};
/** A found joint, specified as the listed one is, told up to a point of its life. */
const foundTo = (point: Point): Story => {
  const story = new Story(PAYLOADS['joint-found']);
  return toldTo(point, story.record('joint-specified', { specification, tag: 'J-1001', criticality: 'C' }));
};
const spaded = () =>
  new Story({
    ...listing,
    makes: [
      { ...plan, purpose: 'spade-in' },
      { ...plan, makeId: id.NEXT_MAKE, number: 2 },
    ],
  });
const nextReleased = (story: Story): Story => {
  const next = { makeId: id.NEXT_MAKE };
  return story
    .record('procedure-assigned', {}, next)
    .record('target-approved', {}, next)
    .record('break-released', {}, next);
};
const spadeGasket = gasket({ purpose: 'spade-in' });
const spadedTo = (point: 'open' | 'tight'): Story => {
  const story = toldTo('open', spaded());
  if (point === 'open') return nextReleased(story);
  return nextReleased(
    story
      .record('faces-inspected')
      .record('nipped-up', spadeGasket)
      .pass(1)
      .pass(2)
      .pass(3)
      .record('final-round-recorded'),
  );
};
/** A fact in review: a pass with a wrench that is out of calibration, said to be done already. */
const inReview = (): Story => {
  const story = toldTo('nipped up');
  const around = withTool(id.WRENCH, { calibrations: [] });
  story.propose('pass-recorded', { ...story.sound('pass-recorded'), ...setTo(72) }, { alreadyDone: true, around });
  return story;
};
/** A pass that is told although nobody told of the nipping up. */
const misplaced = (): Story => {
  const story = toldTo('faces accepted');
  story.propose('pass-recorded', story.sound('pass-recorded'), { alreadyDone: true });
  return story;
};
const settlement = (story: Story) => ({ eventId: story.make().waiting[0]?.eventId ?? story.events.at(-1)!.eventId });
const eventOf = (story: Story, type: string) => ({ eventId: story.events.find((e) => e.type === type)!.eventId });
const aboutEvent = <T extends 'corrected' | 'revoked'>(type: T, point: Point, names: string, around = {}) =>
  ask(toldTo(point), type, eventOf(toldTo(point), names) as Partial<Payload<T>>, around);
const exemptClosure = () => new Story({ ...listing, makes: [{ ...plan, proof: 'exempt-closure' }] });
const { criticalities } = DEFAULT_SETTINGS;
const checkedByItself: Partial<RuleContext> = {
  settings: {
    ...DEFAULT_SETTINGS,
    criticalities: { ...criticalities, C: { ...criticalities.C, checkingLevel: 'self' } },
  },
};

const holdCase = (point: Point, type: EventType): RuleCase => at(point, type, { story: onHold(point) });

/** Each rule about a make. A code that is missing here, or a case that does not do what it says, fails the suite. */
export const RULE_CASES: Readonly<Record<string, RuleCase>> = {
  'engineered.before-tightening': at('procedure assigned', 'target-approved', { story: () => toldTo('checked') }),
  'engineered.procedure-first': at('procedure assigned', 'target-approved', { story: () => toldTo('listed') }),
  'released.engineered-first': at('engineered', 'break-released', { story: () => toldTo('procedure assigned') }),
  'open.released-first': at('released', 'opened', { story: () => toldTo('engineered') }),
  'faces.open-first': at('open', 'faces-inspected', { story: () => toldTo('released') }),
  'nipped-up.faces-first': at('faces accepted', 'nipped-up', { story: () => toldTo('open') }),
  'passes.nipped-up-first': at('nipped up', 'pass-recorded', { story: () => toldTo('faces accepted') }),
  'passes.in-order': at('first pass', 'pass-recorded', { change: { pass: 3 } }, { change: { pass: 2 } }),
  'tight.passes-first': at('every pass', 'final-round-recorded', { story: () => toldTo('first pass') }),
  'tight.before-relaxation': at(
    'tight',
    'relaxation-pass-recorded',
    { story: () => toldTo('every pass') },
    { story: () => toldTo('tight').wait(4) },
  ),
  'stud.bolts-in': at('nipped up', 'stud-replaced', { story: () => toldTo('open') }),
  'loosened.bolts-in': at('tight', 'loosened', { story: () => toldTo('open') }),
  'checked.tight-first': at('tight', 'checked', { story: () => toldTo('every pass') }),
  'witnessed.at-its-stage': at('tight', 'witnessed', { story: () => toldTo('nipped up') }),
  'proven.checked-first': at('checked', 'proven', { story: () => toldTo('tight') }),
  'handed-over.proven-first': at('proven', 'hand-over-offered', { story: () => toldTo('checked') }),
  'taken-back.handed-over-first': at('handed over', 'taken-back', { story: () => toldTo('proven') }),

  'released.not-on-hold': holdCase('engineered', 'break-released'),
  'open.not-on-hold': holdCase('released', 'opened'),
  'faces.not-on-hold': holdCase('open', 'faces-inspected'),
  'nipped-up.not-on-hold': holdCase('faces accepted', 'nipped-up'),
  'passes.not-on-hold': holdCase('nipped up', 'pass-recorded'),
  'tight.not-on-hold': holdCase('every pass', 'final-round-recorded'),
  'checked.not-on-hold': holdCase('tight', 'checked'),
  'proven.not-on-hold': holdCase('checked', 'proven'),
  'handed-over.not-on-hold': holdCase('proven', 'hand-over-offered'),
  'hold-released.by-its-role': at(
    'open',
    'hold-released',
    { around: { actorRoles: ['coordinator'] } },
    { story: onHold('open') },
  ),
  'register.begun-work-stays': at('released', 'make-cancelled', { story: () => toldTo('open') }),
  'register.merged-in-register': {
    fires: () => ask(new Story(), 'joint-merged'),
    satisfied: () => ask(foundTo('listed'), 'joint-merged'),
  },
  'register.merged-once-worked': {
    fires: () =>
      ask(
        foundTo('first pass'),
        'joint-merged',
        {},
        { mergeInto: { joint: toldTo('open').state, make: toldTo('open').make() } },
      ),
    satisfied: () => ask(foundTo('first pass'), 'joint-merged'),
  },
  'make.in-work': at('released', 'opened', { story: () => toldTo('released').record('joint-voided') }),
  'make.pressure-off': at('tight', 'loosened', { story: leaking }, { story: releasedAgain }),

  'engineered.procedure-approved': at('listed', 'procedure-assigned', {
    around: { procedure: { ...surroundings.procedure!, approved: false } },
  }),
  'engineered.kind': at('listed', 'procedure-assigned', { around: withScope({ kinds: ['clamp-connector'] }) }),
  'engineered.bolt-count': at('listed', 'procedure-assigned', { around: withScope({ leastBolts: 12 }) }),
  'engineered.rating': at('listed', 'procedure-assigned', { around: withScope({ ratings: ['600'] }) }),
  'engineered.gasket-family': at('listed', 'procedure-assigned', {
    around: withScope({ gasketFamilies: ['ring-joint'] }),
  }),
  'engineered.tools': at('listed', 'procedure-assigned', { around: withProcedure({ tools: 3 }) }),
  'engineered.work-scope': at(
    'listed',
    'procedure-assigned',
    { around: withScope({ workScopes: undefined }) },
    { story: () => new Story({ ...listing, makes: [{ ...plan, workScope: 'hot-bolting' }] }) },
  ),
  'engineered.target-for-stack': at('procedure assigned', 'target-approved', {
    around: { newTarget: { ...targetEvidence, gasketFamily: 'ptfe-sheet' } },
  }),
  'engineered.target-window': at('procedure assigned', 'target-approved', {
    around: { newTarget: { ...targetEvidence, insideWindow: false } },
  }),

  'released.permit': at('engineered', 'break-released', { around: withPermit({ jointIds: [id.uuid(77)] }) }),
  'released.signature': at('engineered', 'break-released', { around: { signed: false } }),

  'open.zero-energy-checks': at('released', 'opened', {
    change: { zeroEnergyChecks: PAYLOADS.opened.zeroEnergyChecks.slice(0, 1) },
  }),
  'open.zero-energy-by-two': at('released', 'opened', {
    change: { zeroEnergyChecks: PAYLOADS.opened.zeroEnergyChecks.map((check) => ({ ...check, personId: id.ANA })) },
  }),
  'open.first-break-caution': at('released', 'opened', { change: { cautionShown: false } }),
  'open.qualified': at('released', 'opened', { around: unqualified(id.BEN) }),
  'open.planned-crew': at('released', 'opened', { around: { performedBy: [id.INES] } }),
  'open.permit-in-force': at('released', 'opened', { around: withPermit({ withdrawn: true }) }),
  'open.earlier-make-closed': at(
    'released',
    'opened',
    { story: () => spadedTo('open') },
    { story: () => spadedTo('tight'), choices: { makeId: id.NEXT_MAKE } },
  ),

  'faces.every-face': at('open', 'faces-inspected', {
    change: { faces: PAYLOADS['faces-inspected'].faces.slice(0, 1) },
  }),
  'faces.measured': at(
    'open',
    'faces-inspected',
    { change: faces({ flatness_mm: null }) },
    { story: () => toldTo('open', ofCriticality('A')) },
  ),
  'faces.flatness': at(
    'open',
    'faces-inspected',
    { change: faces({ flatness_mm: 0.3 }) },
    { change: faces({ flatness_mm: 0.25 }) },
  ),
  'faces.imperfections': at(
    'open',
    'faces-inspected',
    // The gasket covers 15.15 mm: a mark over more than half of it is a hair deep at most.
    { change: faces({ condition: 'scored', imperfectionDepth_mm: 0.2, imperfectionExtent_mm: 9 }) },
    { change: faces({ condition: 'scored', imperfectionDepth_mm: 0.7, imperfectionExtent_mm: 7 }) },
  ),
  'faces.ring-groove': at(
    'open',
    'faces-inspected',
    { change: faces({ ringGrooveTouched: false }) },
    {
      story: () => toldTo('open', specified({ flange: { ...specification.flange, facing: 'ring-joint' } })),
      change: faces({ ringGrooveTouched: true }),
    },
  ),
  'faces.bolting': at('open', 'faces-inspected', { change: { bolting: { condition: 'reused', accepted: false } } }),
  'faces.qualified': at('open', 'faces-inspected', { around: unqualified(id.ANA) }),

  'nipped-up.faces-not-lapsed': at('faces accepted', 'nipped-up', {
    story: () => toldTo('faces accepted').wait(DEFAULT_SETTINGS.faceAcceptanceLapses_h),
  }),
  'nipped-up.gasket-family': at('faces accepted', 'nipped-up', { change: gasket({ family: 'graphite-sheet' }) }),
  'nipped-up.gasket-size': at('faces accepted', 'nipped-up', { change: gasket({ rating: '300' }) }),
  'nipped-up.gasket-purpose': at('faces accepted', 'nipped-up', { change: gasket({ purpose: 'test' }) }),
  'nipped-up.gasket-count': at('faces accepted', 'nipped-up', { change: gasket({ count: 2 }) }),
  'nipped-up.gasket-identified': at('faces accepted', 'nipped-up', {
    change: gasket({ batch: null, markingPhoto: null }),
  }),
  'nipped-up.bolting-as-target': at('faces accepted', 'nipped-up', { change: bolting({ grade: 'B8' }) }),
  'nipped-up.lubricant-as-target': at('faces accepted', 'nipped-up', {
    change: { lubricantId: id.uuid(88), lubricant: 'Engine oil' },
  }),
  'nipped-up.alignment': at('faces accepted', 'nipped-up', { change: alignment({ offset_mm: 1.8 }) }),
  'nipped-up.alignment-beyond-band': at('faces accepted', 'nipped-up', { change: alignment({ offset_mm: null }) }),
  'nipped-up.qualified': at('faces accepted', 'nipped-up', { around: unqualified(id.ANA) }),

  'passes.target-in-force': at('nipped up', 'pass-recorded', {
    story: () => {
      const story = toldTo('nipped up');
      return story.record('revoked', eventOf(story, 'target-approved'));
    },
  }),
  'passes.talk': at('nipped up', 'pass-recorded', {
    around: { talks: [{ ...surroundings.talks[0]!, revision: 1 }] },
  }),
  'passes.qualified': at('nipped up', 'pass-recorded', { around: unqualified(id.BEN) }),
  'passes.every-bolt': at('nipped up', 'pass-recorded', { change: { boltsDone: 5 } }),
  'passes.gap-check-overnight': at(
    'first pass',
    'pass-recorded',
    { change: { gapsChecked_mm: null } },
    {
      change: { ...setTo(168), pass: 2, gapsChecked_mm: [3.1, 3.2, 3.1, 3.2] },
      around: { leftOvernight: true },
    },
  ),
  'passes.set-as-target': at('nipped up', 'pass-recorded', { change: setTo(90) }, { change: setTo(74) }),
  'passes.time-plausible': at('nipped up', 'pass-recorded', {
    change: { startedAt: '2027-03-02T13:59:30.000Z', endedAt: '2027-03-02T14:00:00.000Z' },
  }),
  'passes.one-place-at-a-time': at('nipped up', 'pass-recorded', {
    around: { elsewhereAtTheSameTime: ['J-1002'] },
  }),
  'passes.tool-calibrated': at('nipped up', 'pass-recorded', {
    around: withTool(id.WRENCH, { failedOn: '2027-03-01' }),
  }),
  'passes.tool-set-complete': at(
    'nipped up',
    'pass-recorded',
    { change: { tools: { ...hydraulic, gaugeId: null } } },
    { change: { tools: hydraulic } },
  ),
  'passes.tool-in-range': at('nipped up', 'pass-recorded', { change: setTo(60) }, { change: setTo(72) }),

  'tight.no-nut-movement': at('every pass', 'final-round-recorded', { change: { nutMoved: true } }),
  'tight.no-relaxation-pass-on-hot-elastomer': at(
    'tight',
    'relaxation-pass-recorded',
    { story: () => hotFibre(true) },
    { story: () => hotFibre(false) },
  ),
  'tight.relaxation-waited': at(
    'tight',
    'relaxation-pass-recorded',
    { story: () => toldTo('tight') },
    { story: () => toldTo('tight').wait(DEFAULT_SETTINGS.relaxationPassAfter_h) },
  ),

  'checked.level': at(
    'tight',
    'checked',
    { change: { level: 'chargehand' } },
    { story: () => toldTo('tight', ofCriticality('A')).record('witnessed'), change: byQuality },
  ),
  'checked.lot-rejected': at(
    'tight',
    'checked',
    { change: { level: 'chargehand' } },
    { change: byQuality, around: { lotRejections: ['J-1009'] } },
  ),
  'checked.self-by-two': at(
    'tight',
    'checked',
    { around: { performedBy: [id.ANA, id.CARL] } },
    { change: { level: 'self' }, around: checkedByItself },
  ),
  'checked.chargehand-no-pass': at('tight', 'checked', { around: { signerPersonId: id.ANA } }),
  'checked.not-of-the-crew': at('tight', 'checked', { around: { signerPersonId: id.CARL } }, { change: byQuality }),
  'checked.other-company': at(
    'tight',
    'checked',
    {
      around: {
        persons: {
          ...surroundings.persons,
          [id.INES]: { ...surroundings.persons[id.INES]!, company: 'Northbank Fitting' },
        },
      },
    },
    { story: () => toldTo('tight', ofCriticality('A')).record('witnessed'), change: byQuality },
  ),
  'checked.relaxation-not-overdue': at(
    'tight',
    'checked',
    {
      story: () => toldTo('tight', ofCriticality('A')).wait(DEFAULT_SETTINGS.relaxationPassOverdue_h),
      change: byQuality,
    },
    { story: () => toldTo('tight', ofCriticality('A')).record('witnessed'), change: byQuality },
  ),
  'checked.witness-point': at(
    'tight',
    'checked',
    { story: () => toldTo('tight', ofCriticality('A')), change: byQuality },
    { story: () => toldTo('tight', ofCriticality('A')).record('witnessed'), change: byQuality },
  ),
  'checked.nothing-in-review': at('tight', 'checked', { story: inReview }),
  'checked.rejection-reason': at(
    'tight',
    'checked',
    { change: { reason: null } },
    { change: { outcome: 'rejected', reason: 'Two nuts without paint mark' } },
  ),

  'proven.pack-released': at('checked', 'proven', { around: withPack({ released: null }) }),
  'proven.way': at('checked', 'proven', { change: { way: 'gas-or-sniff-test' } }),
  'proven.no-A-items': at('checked', 'proven', { around: { unclosedPunchA: 1 } }),
  'proven.no-relaxation-due': at('checked', 'proven', { around: withPack({ relaxationDue: ['J-1003'] }) }),
  'proven.no-provisional-tool': at('checked', 'proven', { around: withPack({ provisionalTools: ['J-1004'] }) }),
  'proven.pressure-held': at('checked', 'proven', {
    around: withPack({ readings: [{ ...surroundings.pack!.readings[0]!, held_min: 12 }] }),
  }),
  'proven.joint-result': at('checked', 'proven', {
    around: withPack({
      readings: [{ ...surroundings.pack!.readings[0]!, results: [{ makeId: id.MAKE, result: 'leak' }] }],
    }),
  }),
  'proven.closure-witnessed': at(
    'checked',
    'proven',
    { story: () => toldTo('checked', exemptClosure()) },
    {
      story: () => toldTo('checked', exemptClosure()).record('witnessed'),
      change: { way: 'exempt-closure', packId: null },
    },
  ),
  'proven.lot-sampled': at(
    'checked',
    'proven',
    { around: { lotSampled: false } },
    { story: () => toldTo('checked', ofCriticality('B')), around: { lotSampled: true } },
  ),
  'proven.boundary-walked': at('checked', 'proven', { around: withRelease({ boundaryWalked: false }) }),
  'proven.blinds-rated': at('checked', 'proven', { around: withRelease({ blindsRated: false }) }),
  'proven.relief-valves-out': at('checked', 'proven', { around: withRelease({ reliefValvesOut: false }) }),
  'proven.metal-temperature': at('checked', 'proven', { around: withRelease({ metalTemperature_C: 2 }) }),
  'proven.gauges-calibrated': at('checked', 'proven', { around: withRelease({ gaugeIds: [] }) }),

  'handed-over.joints-reconciled': at('proven', 'hand-over-offered', { around: withSystem({ notProven: ['J-1005'] }) }),
  'handed-over.own-system': at('proven', 'hand-over-offered', { change: { systemId: id.uuid(66) } }),
  'handed-over.no-temporary-blinds': at('proven', 'hand-over-offered', {
    around: withSystem({ temporaryBlindsIn: ['B-7'] }),
  }),
  'handed-over.no-temporary-fittings': at('proven', 'hand-over-offered', {
    around: withSystem({ temporaryFittings: ['J-1006'] }),
  }),
  'handed-over.no-A-items': at('proven', 'hand-over-offered', { around: withSystem({ unclosedA: ['Stud short'] }) }),
  'handed-over.exceptions-listed': at(
    'proven',
    'hand-over-offered',
    { change: { exceptions: [] } },
    { change: { exceptions: ['Paint'] }, around: withSystem({ unclosedB: ['Paint'] }) },
  ),
  'handed-over.offered': at('offered', 'handed-over', { story: () => toldTo('proven') }),
  'handed-over.two-persons': at('offered', 'handed-over', { around: { signerPersonId: id.CORA } }),
  'handed-over.signature': at('proven', 'hand-over-offered', { around: { actorRoles: ['engineer'] } }),

  'corrected.fact-only': {
    fires: () => aboutEvent('corrected', 'checked', 'break-released'),
    satisfied: () => aboutEvent('corrected', 'checked', 'opened'),
  },
  'revoked.decision-only': {
    fires: () => aboutEvent('revoked', 'proven', 'opened'),
    satisfied: () => aboutEvent('revoked', 'proven', 'proven'),
  },
  'revoked.entitled': {
    fires: () => aboutEvent('revoked', 'proven', 'proven', { actorRoles: ['operations'] }),
    satisfied: () => aboutEvent('revoked', 'proven', 'proven', { actorRoles: ['inspector'] }),
  },
  'revoked.release-not-worked-on': {
    fires: () => aboutEvent('revoked', 'open', 'break-released'),
    satisfied: () => aboutEvent('revoked', 'released', 'break-released'),
  },
  'review-settled.in-review': {
    fires: () => ask(toldTo('tight'), 'review-settled', settlement(toldTo('tight'))),
    satisfied: () => ask(inReview(), 'review-settled', settlement(inReview())),
  },
  'review-settled.not-own-work': {
    fires: () => ask(inReview(), 'review-settled', settlement(inReview()), { signerPersonId: id.ANA }),
    satisfied: () => ask(inReview(), 'review-settled', settlement(inReview())),
  },
  'review-settled.has-its-place': {
    fires: () => ask(misplaced(), 'review-settled', settlement(misplaced())),
    satisfied: () => ask(misplaced(), 'review-settled', { ...settlement(misplaced()), outcome: 'reject-as-not-done' }),
  },
  'review-settled.punch-named': {
    fires: () => ask(inReview(), 'review-settled', { ...settlement(inReview()), outcome: 'accept-with-punch-item' }),
    satisfied: () =>
      ask(inReview(), 'review-settled', {
        ...settlement(inReview()),
        outcome: 'accept-with-punch-item',
        punchId: id.PUNCH,
      }),
  },
  'deviation.acceptable': at('open', 'deviation-accepted', { change: { rule: 'released.permit' } }),
  'deviation.entitled': at(
    'open',
    'deviation-accepted',
    { around: { actorRoles: ['inspector'] } },
    { change: { rule: 'nipped-up.alignment-beyond-band' } },
  ),
};

const packAsked = (change: Partial<Payload<'pack-released'>>, around: Partial<PackContext> = {}) => ({
  question: { type: 'pack-released', payload: { ...PAYLOADS['pack-released'], ...change } },
  context: { ...surroundings, ...timesAt('2027-03-05T08:00:00.000Z'), ...around },
});

const packCase = (change: Partial<Payload<'pack-released'>>, around: Partial<PackContext> = {}): PackCase => ({
  fires: () => packAsked(change, around),
  satisfied: () => packAsked({}),
});

const readingAsked = (change: Partial<Payload<'test-reading'>>, around: Partial<PackContext> = {}) => ({
  question: { type: 'test-reading', payload: { ...PAYLOADS['test-reading'], ...change } },
  context: { ...surroundings, ...timesAt('2027-03-05T08:00:00.000Z'), ...around },
});

/** Each rule about a pack. */
export const PACK_CASES: Readonly<Record<string, PackCase>> = {
  'pack.boundary-walked': packCase({ boundaryWalked: false }),
  'pack.blinds-rated': packCase({ blindsRated: false }),
  'pack.relief-valves-out': packCase({ reliefValvesOut: false }),
  'pack.metal-temperature': packCase({ metalTemperature_C: 4 }),
  'pack.gauges-calibrated': packCase({ gaugeIds: [id.uuid(55)] }),
  'pack.no-A-items': packCase({}, withPack({ unclosedA: ['Support missing'] }) as Partial<PackContext>),
  'pack.no-relaxation-due': packCase({}, withPack({ relaxationDue: ['J-1003'] }) as Partial<PackContext>),
  'pack.no-provisional-tool': packCase({}, withPack({ provisionalTools: ['J-1004'] }) as Partial<PackContext>),
  'pack.read-once-released': {
    fires: () => readingAsked({}, withPack({ released: null }) as Partial<PackContext>),
    satisfied: () => readingAsked({}),
  },
  'pack.read-by-calibrated-gauge': {
    fires: () => readingAsked({ gaugeIds: [] }),
    satisfied: () => readingAsked({}),
  },
};
