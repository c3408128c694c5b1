import type { MakePlan } from '@seatwell/contract';
import type { MakeState } from '../state.ts';

/** What is known of gasket, bolts and passes while the joint lies open or nobody has begun. */
export const NOTHING_FITTED = {
  facesAcceptedAt: null,
  boltingCondition: null,
  fitted: null,
  passes: [],
  nextPass: 1,
  partTight: null,
  tightAt: null,
  relaxationDone: false,
} as const;

/** A make as it was planned: nothing has happened to it yet. */
export function newMake(plan: MakePlan): MakeState {
  return {
    makeId: plan.makeId,
    number: plan.number,
    purpose: plan.purpose,
    workScope: plan.workScope,
    clampedParts: plan.clampedParts,
    gasket: plan.gasket,
    checkingLevel: plan.checkingLevel,
    proof: plan.proof,
    plannedOn: plan.plannedOn,
    crewId: plan.crewId,
    packs: plan.packs,
    cancelled: false,
    stage: 'planned',
    stageSince: null,
    rejected: false,
    leaking: false,
    underPressure: false,
    hasLeaked: false,
    retighten: false,
    provisionalTools: [],
    implausible: [],
    waiting: [],
    deviations: [],
    procedure: null,
    target: null,
    permitId: null,
    openedAt: null,
    openedBy: [],
    ...NOTHING_FITTED,
    studsReplaced: [],
    workedBy: [],
    workRecordedBy: [],
    toolsUsed: [],
    sampleDrawn: false,
    lotKey: null,
    checkedBy: null,
    checkedAt: null,
    witnessed: [],
    provenAt: null,
    handedOverAt: null,
    superseded: [],
    lastEventAt: null,
    lastEventBy: [],
  };
}
