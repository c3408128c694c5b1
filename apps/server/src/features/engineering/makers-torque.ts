import { CALC_VERSION } from '@seatwell/calc';
import type { Payload } from '@seatwell/contract';
import { gasketOf, type JointState, type MakeState, type TargetEvidence } from '@seatwell/workflow';
import type { FactsLoader } from '../joints/facts.ts';
import { procedureOf, refused } from './target-data.ts';
import { targetInputsHash } from './target-hash.ts';

type Choice = Payload<'target-approved'>;

/** The target of a maker’s torque: nothing is computed. @throws Problem `calculation-refused` */
export async function makersTorque(
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
  if (procedure.content.method === 'elongation')
    throw refused(
      joint,
      'torque-not-for-elongation',
      'a torque says nothing about how far the bolts are stretched. Set the target by calculation.',
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
