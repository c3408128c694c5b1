import { CALC_VERSION, CalcRefusal, type TargetAnswer, targetWindow } from '@seatwell/calc';
import type { Payload, TensionerChoice, TighteningChoice } from '@seatwell/contract';
import {
  gasketOf,
  type JointState,
  type MakeState,
  type ProcedureFacts,
  type TargetEvidence,
  type Tensioning,
} from '@seatwell/workflow';
import { Problem } from '../../platform/errors/problem.ts';
import { contentHash } from '../../platform/record/canonical.ts';
import type { FactsLoader } from '../joints/facts.ts';
import { type GasketData, type Lubricant, targetRequest } from './target-request.ts';
import { chosenTensioner, tensioningOf } from './tensioning.ts';
import { tighteningPlan } from './tightening-plan.ts';

type Choice = Payload<'target-approved'>;

const refused = (joint: JointState, code: string, message: string): Problem =>
  new Problem('calculation-refused', `${joint.tag}: ${message}`, [
    { path: 'payload', code, message, joint: joint.tag },
  ]);

async function procedureOf(facts: FactsLoader, joint: JointState, make: MakeState): Promise<ProcedureFacts> {
  const assigned = make.procedure;
  const procedure = assigned ? await facts.procedure(assigned.procedureId, assigned.revision) : null;
  if (!procedure) throw refused(joint, 'procedure-missing', 'assign an approved procedure before a target is set.');
  return procedure;
}

async function dataOf<T>(
  facts: FactsLoader,
  joint: JointState,
  dataId: string,
  kind: string,
): Promise<{ content: T; name: string; hash: string }> {
  const data = await facts.sourcedData(dataId);
  if (data?.kind !== kind) throw refused(joint, `${kind}-unknown`, `there is no ${kind} ${dataId} at this site.`);
  return { content: data.content as T, name: data.name, hash: data.hash };
}

/** Hash of every input that the calculation uses: when it differs, the target is out of date. */
export function targetInputsHash(
  joint: JointState,
  make: MakeState,
  procedure: ProcedureFacts | null,
  dataHashes: readonly (string | null)[],
): string {
  const { flange, service } = joint.specification;
  const gasket = gasketOf(joint, make);
  return contentHash({
    flange,
    bolting: joint.bolting,
    gasket,
    service,
    method: procedure?.content.method ?? null,
    policy: procedure?.content.policy ?? null,
    passPercents: procedure?.content.passPercents ?? null,
    ...(procedure?.content.method === 'tensioner'
      ? {
          coverage: procedure.content.coverage ?? null,
          clampedParts: make.clampedParts ?? joint.specification.clampedParts,
        }
      : {}),
    data: dataHashes,
  }).toString('hex');
}

/** What the product stores and shows of a calculated target. */
function calculated(
  joint: JointState,
  make: MakeState,
  answer: TargetAnswer,
  more: Pick<
    TargetEvidence,
    'basis' | 'shortfallReason' | 'inputsHash' | 'gasketDataId' | 'tableId' | 'sources' | 'lubricant' | 'lubricantId'
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
    })),
    gasketFamily: gasketOf(joint, make).family,
    boltGrade: joint.bolting?.grade ?? null,
    boltCondition: make.boltingCondition ?? 'new',
  };
}

/** @throws Problem `calculation-refused` that names the joint, from a refusal of the calculation */
function withJoint<T>(joint: JointState, calculate: () => T): T {
  try {
    return calculate();
  } catch (error) {
    if (!(error instanceof CalcRefusal)) throw error;
    throw new Problem(
      'calculation-refused',
      `${joint.tag}: ${error.message}`,
      error.errors.map((item) => ({ ...item, joint: joint.tag })),
    );
  }
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

/** The chosen data of a calculated target: gasket limits, lubricant and tensioner. */
export interface ChosenData {
  readonly gasketDataId: string;
  readonly lubricantId: string;
  readonly boltStress_MPa: number | null;
  readonly acceptedShortfall: string | null;
  readonly tightening?: TighteningChoice | null | undefined;
  readonly tensioner?: TensionerChoice | null | undefined;
}

async function calculatedTarget(
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
  const answer = withJoint(joint, () => targetWindow({ ...request, working }));
  const asCalculated = calculated(joint, make, answer, {
    basis,
    shortfallReason: choice.acceptedShortfall,
    inputsHash: targetInputsHash(joint, make, procedure, [gasket.hash, lubricant.hash]),
    gasketDataId: choice.gasketDataId,
    tableId,
    sources: [...new Set([gasket.content.source, lubricant.content.source, procedure.content.policy.source])],
    lubricant: lubricant.name,
    lubricantId: choice.lubricantId,
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

async function rowOfTable(
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  tableId: string,
): Promise<ChosenData> {
  const table = await facts.targetTable(tableId);
  if (!table) throw refused(joint, 'table-unknown', 'there is no such target table at this site.');
  const { flange } = joint.specification;
  const { content } = table;
  const row = content.rows.find(
    (each) => each.standard === flange.standard && each.size === flange.size && each.rating === flange.rating,
  );
  if (!row) {
    throw refused(
      joint,
      'not-in-table',
      `table “${table.name}” has no row for ${flange.standard} ${flange.size} ${flange.rating}.`,
    );
  }
  if (make.procedure?.procedureId !== content.procedureId || make.procedure.revision !== content.procedureRevision) {
    throw refused(
      joint,
      'table-of-other-procedure',
      `table “${table.name}” was approved for another procedure revision.`,
    );
  }
  if (joint.bolting?.grade !== content.boltGrade) {
    throw refused(
      joint,
      'table-of-other-grade',
      `table “${table.name}” is for ${content.boltGrade} bolts, this joint has ${joint.bolting?.grade ?? 'none named'}.`,
    );
  }
  return {
    gasketDataId: content.gasketDataId,
    lubricantId: content.lubricantId,
    boltStress_MPa: row.boltStress_MPa,
    acceptedShortfall: row.acceptedShortfall,
  };
}

async function makersTorque(
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  choice: Extract<Choice, { basis: 'makers-torque' }>,
): Promise<TargetEvidence> {
  const procedure = await procedureOf(facts, joint, make);
  if (procedure.content.method === 'tensioner')
    throw refused(
      joint,
      'torque-not-for-tensioner',
      'a torque says nothing about the pressure of a tensioner. Set the target by calculation.',
    );
  return {
    basis: 'makers-torque',
    inputsHash: targetInputsHash(joint, make, procedure, [null]),
    calcVersion: CALC_VERSION,
    insideWindow: true,
    shortfallReason: null,
    boltStress_MPa: null,
    area: null,
    boltLoad_N: null,
    governedBy: 'makers-torque',
    torque_Nm: choice.torque_Nm,
    passes: procedure.content.passPercents.map((percent) => ({
      percent,
      torque_Nm: (choice.torque_Nm * percent) / 100,
      pressure_MPa: null,
    })),
    gasketFamily: gasketOf(joint, make).family,
    boltGrade: joint.bolting?.grade ?? null,
    boltCondition: make.boltingCondition ?? 'either',
    lubricant: choice.lubricant,
    lubricantId: null,
    gasketDataId: null,
    tableId: null,
    sources: [choice.source],
  };
}

/**
 * The target that a choice of the engineer leads to, as the record keeps it.
 * @throws Problem `calculation-refused` naming joint, input and remedy
 */
export async function computeTarget(
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  choice: Choice,
): Promise<TargetEvidence> {
  switch (choice.basis) {
    case 'calculated':
      return (await calculatedTarget(facts, joint, make, choice, 'calculated', null)).evidence;
    case 'target-table': {
      const row = await rowOfTable(facts, joint, make, choice.tableId);
      return (await calculatedTarget(facts, joint, make, row, 'target-table', choice.tableId)).evidence;
    }
    case 'makers-torque':
      return makersTorque(facts, joint, make, choice);
  }
}

/** The whole answer with its working, before anything is approved. */
export async function previewTarget(
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  choice: Choice,
): Promise<{ evidence: TargetEvidence; answer: ReturnType<typeof targetWindow> | null }> {
  if (choice.basis === 'calculated') return calculatedTarget(facts, joint, make, choice, 'calculated', null, true);
  if (choice.basis === 'makers-torque')
    return { evidence: await makersTorque(facts, joint, make, choice), answer: null };
  return calculatedTarget(
    facts,
    joint,
    make,
    await rowOfTable(facts, joint, make, choice.tableId),
    'target-table',
    choice.tableId,
    true,
  );
}
