import type { EventType, JointSpecification, Payload } from '@seatwell/contract';
import { DEFAULT_SETTINGS, type RuleContext } from '@seatwell/workflow';
import * as id from '../ids.ts';
import { PAYLOADS } from '../payloads.ts';
import { listing, plan, procedureContent, specification, targetEvidence } from '../register.ts';
import { type Point, Story, toldTo, torque } from '../story.ts';
import { surroundings, tools } from '../world.ts';
import { ask, at, type RuleCase } from './rule-case.ts';

export const content = procedureContent;
export const withProcedure = (change: Partial<typeof content>, facts: object = {}): Partial<RuleContext> => ({
  procedure: { ...surroundings.procedure!, content: { ...content, ...change }, ...facts },
});
export const withScope = (change: Partial<typeof content.appliesTo>) =>
  withProcedure({ appliesTo: { ...content.appliesTo, ...change } });
export const withPack = (change: Partial<NonNullable<RuleContext['pack']>>): Partial<RuleContext> => ({
  pack: { ...surroundings.pack!, ...change },
});
export const withSystem = (change: Partial<NonNullable<RuleContext['system']>>): Partial<RuleContext> => ({
  system: { ...surroundings.system!, ...change },
});
export const withRelease = (change: object) => withPack({ released: { ...surroundings.pack!.released!, ...change } });
export const withTool = (toolId: string, change: object): Partial<RuleContext> => ({
  tools: { ...tools, [toolId]: { ...tools[toolId]!, ...change } },
});
export const withPermit = (change: object): Partial<RuleContext> => ({
  permits: [{ ...surroundings.permits[0]!, ...change }],
});
export const unqualified = (personId: string): Partial<RuleContext> => ({
  persons: { ...surroundings.persons, [personId]: { ...surroundings.persons[personId]!, qualifications: [] } },
});

export const specified = (change: Partial<JointSpecification>, more: Partial<typeof listing> = {}) =>
  new Story({ ...listing, ...more, specification: { ...specification, ...change } });
export const ofCriticality = (criticality: 'A' | 'B') => new Story({ ...listing, criticality });
export const gasket = (change: object) => ({ gasket: { ...PAYLOADS['nipped-up'].gasket, ...change } });
export const bolting = (change: object) => ({ bolting: { ...PAYLOADS['nipped-up'].bolting, ...change } });
export const alignment = (change: object) => ({ alignment: { ...PAYLOADS['nipped-up'].alignment, ...change } });
export const faces = (change: object) => ({
  faces: PAYLOADS['faces-inspected'].faces.map((face) => ({ ...face, ...change })),
});
export const hydraulic = { toolId: id.HYDRAULIC_WRENCH, pumpId: id.PUMP, gaugeId: id.PUMP_GAUGE };
export const setTo = (torque_Nm: number) => ({ set: torque(torque_Nm) });
export const byQuality = { level: 'every' } as const;

export const onHold = (point: Point) => () => toldTo(point).record('hold-placed');
export const leaking = () => toldTo('tight').record('leak-found');
export const releasedAgain = () => leaking().record('break-released');
export const hotFibre = (hotExposed: boolean) => {
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
export const foundTo = (point: Point): Story => {
  const story = new Story(PAYLOADS['joint-found']);
  return toldTo(point, story.record('joint-specified', { specification, tag: 'J-1001', criticality: 'C' }));
};
export const spaded = () =>
  new Story({
    ...listing,
    makes: [
      { ...plan, purpose: 'spade-in' },
      { ...plan, makeId: id.NEXT_MAKE, number: 2 },
    ],
  });
export const nextReleased = (story: Story): Story => {
  const next = { makeId: id.NEXT_MAKE };
  return story
    .record('procedure-assigned', {}, next)
    .record('target-approved', {}, next)
    .record('break-released', {}, next);
};
export const spadeGasket = gasket({ purpose: 'spade-in' });
export const spadedTo = (point: 'open' | 'tight'): Story => {
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
export const inReview = (): Story => {
  const story = toldTo('nipped up');
  const around = withTool(id.WRENCH, { calibrations: [] });
  story.propose('pass-recorded', { ...story.sound('pass-recorded'), ...setTo(72) }, { alreadyDone: true, around });
  return story;
};
/** A pass that is told although nobody told of the nipping up. */
export const misplaced = (): Story => {
  const story = toldTo('faces accepted');
  story.propose('pass-recorded', story.sound('pass-recorded'), { alreadyDone: true });
  return story;
};
export const settlement = (story: Story) => ({
  eventId: story.make().waiting[0]?.eventId ?? story.events.at(-1)!.eventId,
});
export const eventOf = (story: Story, type: string) => ({
  eventId: story.events.find((e) => e.type === type)!.eventId,
});
export const aboutEvent = <T extends 'corrected' | 'revoked'>(type: T, point: Point, names: string, around = {}) =>
  ask(toldTo(point), type, eventOf(toldTo(point), names) as Partial<Payload<T>>, around);
export const exemptClosure = () => new Story({ ...listing, makes: [{ ...plan, proof: 'exempt-closure' }] });
export const { criticalities } = DEFAULT_SETTINGS;
export const checkedByItself: Partial<RuleContext> = {
  settings: {
    ...DEFAULT_SETTINGS,
    criticalities: { ...criticalities, C: { ...criticalities.C, checkingLevel: 'self' } },
  },
};

export const holdCase = (point: Point, type: EventType): RuleCase => at(point, type, { story: onHold(point) });
