import { CALC_VERSION, type TargetAnswer, targetWindow } from '@seatwell/calc';
import type { TensionerChoice, TighteningChoice } from '@seatwell/contract';
import {
  gasketOf,
  given,
  type JointState,
  type MakeState,
  type TargetEvidence,
  type Tensioning,
} from '@seatwell/workflow';
import type { FactsLoader } from '../joints/facts.ts';
import { elongationOf } from './elongation.ts';
import { notChecked } from './not-checked.ts';
import { boltSources, conditionOf, targetBolts } from './target-bolting.ts';
import { dataOf, procedureOf, withJoint } from './target-data.ts';
import { targetInputsHash } from './target-hash.ts';
import { jointSources } from './target-joint.ts';
import { type GasketData, type Lubricant, targetRequest } from './target-request.ts';
import { chosenTensioner, tensioningOf } from './tensioning.ts';
import { tighteningPlan } from './tightening-plan.ts';

/** What the product stores and shows of a calculated target. */
function calculated(
  joint: JointState,
  make: MakeState,
  answer: TargetAnswer,
  more: Pick<
    TargetEvidence,
    | 'basis'
    | 'shortfallReason'
    | 'inputsHash'
    | 'gasketDataId'
    | 'tableId'
    | 'sources'
    | 'lubricant'
    | 'lubricantId'
    | 'boltCondition'
    | 'bolts'
    | 'elongation'
    | 'notChecked'
  >,
): TargetEvidence {
  const insideWindow = answer.window.open && answer.spread.insideWindow;
  return {
    ...more,
    // A reason given ahead for a list stands only where there is a shortfall.
    shortfallReason: insideWindow ? null : more.shortfallReason,
    calcVersion: CALC_VERSION,
    insideWindow,
    boltStress_MPa: answer.target.boltStress_MPa,
    area: answer.target.area,
    boltLoad_N: answer.target.boltLoad_N,
    governedBy: answer.target.governedBy,
    torque_Nm: answer.tool.torque_Nm ?? null,
    passes: answer.passes.map((pass) => ({
      percent: pass.percent,
      torque_Nm: pass.torque_Nm ?? null,
      pressure_MPa: pass.pressure_MPa ?? null,
      ...given('elongation_mm', pass.elongation_mm),
    })),
    gasketFamily: gasketOf(joint, make).family,
    boltGrade: joint.bolting?.grade ?? null,
  };
}

/** The passes of a tensioner: each with the pressure of its last group, which is that of the check pass too. */
function withTensioning(evidence: TargetEvidence, tensioning: Tensioning): TargetEvidence {
  const passes = tensioning.passes.map(({ percent, groupPressures_MPa }) => ({
    percent,
    torque_Nm: null,
    pressure_MPa: groupPressures_MPa.at(-1) ?? null,
  }));
  return { ...evidence, passes, tensioning };
}

// The calculation's own words for what `notChecked` says with what is missing, for this joint.
const TOLD_BY_NOT_CHECKED: readonly string[] = ['rotation-not-checked', 'flange-strength-not-checked'];

const withoutToldTwice = (answer: ReturnType<typeof targetWindow>): ReturnType<typeof targetWindow> => ({
  ...answer,
  warnings: answer.warnings.filter(({ code }) => !TOLD_BY_NOT_CHECKED.includes(code)),
});

/** The chosen data of a calculated target: gasket limits, lubricant and tensioner. */
export interface ChosenData {
  readonly gasketDataId: string;
  readonly lubricantId: string;
  readonly boltStress_MPa: number | null;
  readonly acceptedShortfall: string | null;
  readonly tightening?: TighteningChoice | null | undefined;
  readonly tensioner?: TensionerChoice | null | undefined;
}

/** A target calculated for the stack of a make. @throws Problem `calculation-refused` naming joint, input and remedy */
export async function calculatedTarget(
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  choice: ChosenData,
  basis: 'calculated' | 'target-table',
  tableId: string | null,
  working = false,
): Promise<{ evidence: TargetEvidence; answer: ReturnType<typeof targetWindow> }> {
  const procedure = await procedureOf(facts, joint, make);
  const gasket = await dataOf<GasketData>(facts, joint, choice.gasketDataId, 'gasket-data');
  const lubricant = await dataOf<Lubricant>(facts, joint, choice.lubricantId, 'lubricant');
  const named = choice.tensioner ? [choice.tensioner.toolId] : [];
  const tools = await facts.tools(named);
  const tensioner = withJoint(joint, () => chosenTensioner(procedure.content, choice.tensioner, tools));
  const { boltStress_MPa } = choice;
  const request = withJoint(joint, () =>
    targetRequest(joint, make, procedure.content, gasket.content, lubricant.content, boltStress_MPa, tensioner),
  );
  const answer = withoutToldTwice(withJoint(joint, () => targetWindow({ ...request, working })));
  const asCalculated = calculated(joint, make, answer, {
    basis,
    shortfallReason: choice.acceptedShortfall,
    inputsHash: targetInputsHash(joint, make, procedure, [gasket.hash, lubricant.hash]),
    gasketDataId: choice.gasketDataId,
    tableId,
    sources: [
      ...new Set([
        gasket.content.source,
        lubricant.content.source,
        procedure.content.policy.source,
        ...boltSources(procedure.content),
        ...jointSources(joint.specification),
      ]),
    ],
    lubricant: lubricant.name,
    lubricantId: choice.lubricantId,
    boltCondition: conditionOf(make, procedure.content),
    ...targetBolts(procedure.content),
    ...elongationOf(procedure.content, answer),
    notChecked: notChecked(joint, make, procedure.content, gasket.content),
  });
  const evidence =
    tensioner === null
      ? asCalculated
      : withTensioning(
          asCalculated,
          withJoint(joint, () => tensioningOf(joint, make, tensioner, request, answer.target.boltLoad_N)),
        );
  const tightening = withJoint(joint, () => tighteningPlan(joint, make, procedure.content, answer, choice.tightening));
  return { evidence: tightening === null ? evidence : { ...evidence, tightening }, answer };
}
