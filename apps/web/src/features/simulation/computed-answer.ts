import {
  boltingGrade,
  CalcRefusal,
  type PatternChoice,
  type PreparedJoint,
  passesOf,
  planTorques,
  type RefusalItem,
  type SimulationJoint,
  type TighteningPass,
  type TorquePlan,
  threadFrictionOf,
  toolCap,
  torqueFromLoad,
} from '@seatwell/calc';

/** What the cap and the scale of the tool are computed from; nothing of it is assumed. */
export interface ComputedJob {
  readonly grade: string;
  readonly nutFactor: number;
  /** share of yield under tension and torsion together */
  readonly boltShare: number;
  readonly scatter_percent: number;
  readonly gasketMaximum_MPa: number | undefined;
  readonly division_Nm: number;
  readonly setValues: number;
}

export type ComputedPlanAnswer = TorquePlan & { readonly torque_Nm: number };
export type ComputedAnswer = ComputedPlanAnswer | { readonly refused: readonly RefusalItem[] };

interface Asked {
  readonly passPercents: readonly number[];
  readonly limit_percent: number;
  readonly usual: PatternChoice;
}

/** Plan of computed loads on a flange under the cap of bolt and gasket; a refusal is an answer. */
export function computedAnswer(
  asked: ComputedJob,
  { passPercents, limit_percent, usual }: Asked,
  flange: Pick<PreparedJoint, 'thread'> & { readonly joint: SimulationJoint; readonly target_N: number },
): ComputedAnswer {
  const { joint, target_N, thread } = flange;
  const { contactInside_mm, contactOutside_mm } = joint.gasket;
  const { gasketMaximum_MPa, nutFactor, scatter_percent } = asked;
  try {
    const cap = toolCap({
      thread,
      yield_MPa: boltingGrade({ grade: asked.grade, thread }).yield_MPa,
      utilisation: asked.boltShare,
      threadFriction: threadFrictionOf({ nutFactor, source: 'entered' }, thread, {}),
      scatter_percent,
      ...(gasketMaximum_MPa === undefined
        ? {}
        : {
            gasketMaximum_MPa,
            gasketArea_mm2: (Math.PI / 4) * (contactOutside_mm ** 2 - contactInside_mm ** 2),
            boltCount: joint.boltCount,
          }),
    });
    const { torque_Nm } = torqueFromLoad({ thread, load_N: target_N, model: 'nut-factor', nutFactor });
    const plan = planTorques({
      joint,
      target_N,
      torque_Nm,
      cap: { cap_N: cap.cap_N, percent: (100 * cap.cap_N) / target_N, governedBy: cap.governedBy },
      scatter_percent,
      toolDivision_Nm: asked.division_Nm,
      setValues: asked.setValues,
      usual: passesOf({ ...usual, passPercents }, joint.boltCount),
      limit_percent,
    });
    return { ...plan, torque_Nm };
  } catch (error) {
    if (error instanceof CalcRefusal) return { refused: error.errors };
    throw error;
  }
}

/** The steps of a plan that is worth it; none otherwise. */
export const sequenceOf = (computed: ComputedAnswer | undefined): readonly TighteningPass[] =>
  computed === undefined || 'refused' in computed ? [] : computed.plan.sequence;
