import type { Payload, ToolSetting } from '@seatwell/contract';
import type { RuleContext } from '../context.ts';
import { computedPasses } from '../pass-count.ts';
import type { ComputedPass, Tensioning } from '../state.ts';
import { moment } from '../time.ts';
import { nameOf, notQualified } from './people.ts';
import { list, type Rule, rule } from './rule.ts';
import { TIGHTENING } from './tools.ts';

const tightening = { events: TIGHTENING } as const;

// Between the target and what a tool can be set to lies the tool's division (common practice).
const SET_TOLERANCE = { earlierPass: 0.1, fullPass: 0.05 } as const;

// A pass of computed loads has a few set values; what is recorded is one of them, the highest as the view proposes it.
function computedAgainstSet(set: ToolSetting, { setValues_Nm }: ComputedPass) {
  const given = `${setValues_Nm.map((value) => Number(value.toPrecision(4))).join(', ')} N·m ± ${SET_TOLERANCE.fullPass * 100} %`;
  if (set.torque_Nm === undefined)
    return { detail: 'The pass has computed torques, and no torque was set.', limit: given };
  const { torque_Nm } = set;
  return setValues_Nm.some((value) => Math.abs(torque_Nm - value) <= SET_TOLERANCE.fullPass * value)
    ? null
    : { detail: `${torque_Nm} N·m was set.`, limit: given };
}

// Each group of a tensioner has its own pressure; what is recorded of a pass is one of them, as with computed loads.
function pressureAgainstGroups(
  { pressure_MPa }: ToolSetting,
  passIndex: number | null,
  toolId: string,
  { tools }: RuleContext,
  tensioning: Tensioning,
) {
  const tool = tools[toolId];
  const { hydraulicArea_mm2, passes, toolTag } = tensioning;
  if (tool && tool.hydraulicArea_mm2 !== hydraulicArea_mm2)
    return {
      detail: `${tool.tag} has a hydraulic area of ${tool.hydraulicArea_mm2 ?? 'unknown'} mm².`,
      limit: `${hydraulicArea_mm2} mm² as ${toolTag}`,
    };
  const last = passes.length - 1;
  const pass = passes[Math.min(passIndex ?? last, last)];
  if (!pass) return null;
  // Rounds after the passes are made at the last pressure.
  const given = passIndex === null ? pass.groupPressures_MPa.slice(-1) : pass.groupPressures_MPa;
  const share = pass.percent >= 100 ? SET_TOLERANCE.fullPass : SET_TOLERANCE.earlierPass;
  const limit = `${given.join(', ')} MPa ± ${share * 100} %`;
  if (pressure_MPa === undefined)
    return { detail: 'The pass has pressures of its groups, and no pressure was set.', limit };
  return given.some((value) => Math.abs(pressure_MPa - value) <= share * value)
    ? null
    : { detail: `${pressure_MPa} MPa was set.`, limit };
}

// Rounds at the full value, which are no pass of their own, go by the last pass of the target.
function setAgainstTarget(
  { set, tools: { toolId } }: Payload<(typeof TIGHTENING)[number]>,
  passIndex: number | null,
  context: RuleContext,
) {
  const { make } = context;
  const { target } = make;
  const computed = passIndex === null ? undefined : computedPasses(make)?.[passIndex];
  if (computed) return computedAgainstSet(set, computed);
  if (target?.tensioning) return pressureAgainstGroups(set, passIndex, toolId, context, target.tensioning);
  const last = (target?.passes.length ?? 1) - 1;
  const pass = target?.passes[Math.min(passIndex ?? last, last)];
  if (!target || !pass) return null;
  const pairs = [
    { value: set.torque_Nm, wanted: pass.torque_Nm, unit: 'N·m' },
    { value: set.pressure_MPa, wanted: pass.pressure_MPa, unit: 'MPa' },
    // Targets from before they gave an elongation have nothing to hold a measured one against.
    ...(pass.elongation_mm === undefined ? [] : [{ value: set.elongation_mm, wanted: pass.elongation_mm, unit: 'mm' }]),
  ];
  const pair = pairs.find(({ value }) => value !== undefined);
  if (!pair || pair.value === undefined) return null;
  if (pair.wanted === null)
    return { detail: `${pair.value} ${pair.unit} was set and the target gives no value in ${pair.unit}.` };
  const tolerance = pass.percent >= 100 ? SET_TOLERANCE.fullPass : SET_TOLERANCE.earlierPass;
  return Math.abs(pair.value - pair.wanted) > tolerance * pair.wanted
    ? {
        detail: `${pair.value} ${pair.unit} was set.`,
        limit: `${Number(pair.wanted.toPrecision(4))} ${pair.unit} ± ${tolerance * 100} %`,
      }
    : null;
}

const boltsOf = (payload: Payload<(typeof TIGHTENING)[number]>, { joint }: RuleContext): number =>
  'boltsDone' in payload ? payload.boltsDone : (joint.bolting?.count ?? 0);

export const passesRules: readonly Rule[] = [
  rule({
    ...tightening,
    code: 'passes.target-in-force',
    sentence: 'The make has an approved target and procedure.',
    why: 'Without them nobody can say what to set.',
    remedy: 'The engineer approves procedure and target.',
    clearedBy: ['engineer'],
    test: (_payload, { make }) =>
      make.target && make.procedure
        ? null
        : { detail: `The make has no approved ${make.procedure ? 'target' : 'procedure'}.` },
  }),
  rule({
    ...tightening,
    code: 'passes.talk',
    sentence: 'The crew attended the pre-job talk on the revision of this procedure.',
    why: 'The pattern, the passes and the dangers are told there.',
    remedy: 'The chargehand holds the talk on this revision.',
    clearedBy: ['chargehand'],
    test: (_payload, context) => {
      const { procedure } = context.make;
      if (!procedure) return null; // the target rule says so
      const heard = new Set(
        context.talks
          .filter(
            (talk) =>
              talk.procedureId === procedure.procedureId &&
              talk.revision === procedure.revision &&
              moment(talk.heldAt) <= moment(context.workTime),
          )
          .flatMap((talk) => talk.attendees),
      );
      const missing = context.performedBy.filter((id) => !heard.has(id));
      return missing.length === 0
        ? null
        : {
            detail: `${list(missing.map((id) => nameOf(context, id)))}: no talk attended.`,
            limit: `${procedure.code} revision ${procedure.revision}`,
          };
    },
  }),
  rule({
    ...tightening,
    code: 'passes.qualified',
    sentence: 'The crew is qualified for the method through the shift.',
    why: 'Each method has its own ways to go wrong, and to hurt.',
    remedy: 'Put qualified people on it, or record the qualification.',
    clearedBy: ['inspector', 'administrator'],
    test: (_payload, context) => {
      const { procedure } = context.make;
      const method = procedure ? (context.procedure?.content.method ?? methodOf(procedure.method)) : null;
      return method ? notQualified(context, method) : null;
    },
  }),
  rule({
    code: 'passes.every-bolt',
    sentence: 'A finished pass was made on every bolt that its pattern visits; an interrupted one is repeated.',
    why: 'Where a pass went on from the middle, half the bolts have lost their load meanwhile.',
    remedy: 'Go round every bolt, then record the pass as finished.',
    clearedBy: ['chargehand'],
    events: ['pass-recorded'],
    test: ({ outcome, boltsDone }, { joint, boltsInPass }) => {
      if (outcome !== 'finished') return null;
      if (!joint.bolting) return { detail: 'The register does not give the bolting of the joint.' };
      const wanted = boltsInPass ?? joint.bolting.count;
      return boltsDone === wanted ? null : { detail: `${boltsDone} bolts were tightened in the pass.`, limit: wanted };
    },
  }),
  rule({
    code: 'passes.gap-check-overnight',
    sentence: 'The gap is checked before going on with a joint that was left part tight overnight.',
    why: 'A joint left half loaded creeps and tilts.',
    remedy: 'Measure the gap at four points and record it with the pass.',
    clearedBy: ['chargehand'],
    events: ['pass-recorded'],
    test: ({ gapsChecked_mm }, { make, leftOvernight }) =>
      make.stage === 'part-tight' && leftOvernight && (gapsChecked_mm?.length ?? 0) < 4
        ? { detail: `${gapsChecked_mm?.length ?? 0} gaps were measured since it was left.`, limit: '4 points' }
        : null,
  }),
  rule({
    ...tightening,
    code: 'passes.set-as-target',
    sentence: 'The tool was set to what the target gives for the pass.',
    why: 'A right pattern with a wrong setting is a wrong joint.',
    remedy: 'Tighten to the target; else the engineer accepts with a reason.',
    clearedBy: ['engineer'],
    severity: 'reason',
    test: (payload, context) => setAgainstTarget(payload, 'pass' in payload ? payload.pass - 1 : null, context),
  }),
  rule({
    ...tightening,
    code: 'passes.time-plausible',
    sentence: 'The time taken is plausible for the tool and the number of bolts.',
    why: 'A pass that took no time was not made.',
    remedy: 'Look at the joint; correct the times if they are wrong.',
    clearedBy: ['inspector'],
    severity: 'flag',
    test: (payload, context) => {
      const seconds = (moment(payload.endedAt) - moment(payload.startedAt)) / 1000;
      const bolts = boltsOf(payload, context);
      const least = bolts * context.settings.leastSecondsPerBolt;
      return seconds < least
        ? { detail: `${Math.round(seconds)} s for ${bolts} bolts.`, limit: `at least ${least} s` }
        : null;
    },
  }),
  rule({
    ...tightening,
    code: 'passes.one-place-at-a-time',
    sentence: 'Nobody tightens two flanges at once.',
    why: 'One of the two records is not true.',
    remedy: 'Look at both joints; correct the record that is wrong.',
    clearedBy: ['inspector'],
    severity: 'flag',
    test: (_payload, { elsewhereAtTheSameTime }) =>
      elsewhereAtTheSameTime.length > 0 ? { detail: `At the same time at ${list(elsewhereAtTheSameTime)}.` } : null,
  }),
];

const METHODS = ['torque-wrench', 'hydraulic-wrench', 'tensioner', 'elongation'] as const;

const methodOf = (method: string) => METHODS.find((known) => known === method) ?? null;
