import type { TargetRequest } from '@seatwell/calc';
import type { JointSpecification, Payload, ProcedureContent } from '@seatwell/contract';
import { gasketOf, type JointState, type MakeState } from '@seatwell/workflow';
import { Problem } from '../../platform/errors/problem.ts';
import { type GasketContact, gasketContact } from './gasket-contact.ts';
import { targetBolting } from './target-bolting.ts';
import { clampedThicknesses, type Tensioner } from './tensioning.ts';

export type GasketData = Payload<'gasket-data-entered'>;
export type Lubricant = Payload<'lubricant-entered'>;

/** @throws Problem `calculation-refused` naming what the register does not say yet */
function missing(joint: JointState, path: string, code: string, message: string): never {
  throw new Problem('calculation-refused', `${joint.tag}: ${message}`, [{ path, code, message, joint: joint.tag }]);
}

/** @throws Problem `calculation-refused` where neither the register nor a table says where the gasket touches */
function requireContact(joint: JointState, make: MakeState): GasketContact {
  const contact = gasketContact(joint, make);
  if (contact) return contact;
  const { standard, size, rating } = joint.specification.flange;
  return missing(
    joint,
    'specification.gasket.contactInside_mm',
    'gasket-contact-missing',
    `no table gives the contact of a ${gasketOf(joint, make).family} gasket for ${standard} ${size} ${rating}. Enter its inside and outside contact diameters.`,
  );
}

function flangeOf(joint: JointState, specification: JointSpecification): TargetRequest['flange'] {
  const { standard, size, rating } = specification.flange;
  if (standard !== 'custom') {
    return { standard, size, rating, ...(joint.bolting ? { boltCount: joint.bolting.count } : {}) };
  }
  if (!joint.bolting)
    missing(joint, 'specification.bolting', 'bolting-missing', 'a custom flange needs its bolt count and thread.');
  return { custom: { boltCount: joint.bolting.count, boltThread: joint.bolting.thread } };
}

/**
 * The calculation's request for one make: from the register, the procedure's policy, and entered gasket and lubricant
 * data, and with a tensioner from its plate. Nothing is assumed that none of them says.
 * @throws CalcRefusal `clamped-thickness-missing`, with a tensioner
 * @throws Problem `calculation-refused` naming the joint and what is missing
 */
export function targetRequest(
  joint: JointState,
  make: MakeState,
  procedure: ProcedureContent,
  gasketData: GasketData,
  lubricant: Lubricant,
  boltStress_MPa: number | null,
  tensioner: Tensioner | null,
): TargetRequest {
  const { specification } = joint;
  const gasket = gasketOf(joint, make);
  if (gasketData.family !== gasket.family) {
    missing(
      joint,
      'gasketDataId',
      'other-gasket-family',
      `“${gasketData.name}” is data of a ${gasketData.family} gasket; this make has ${gasket.family}.`,
    );
  }
  const grade = joint.bolting?.grade;
  if (!grade) missing(joint, 'specification.bolting.grade', 'bolt-grade-missing', 'the register names no bolt grade.');
  const { pressure_MPa, temperature_C } = specification.service;
  if (pressure_MPa === null) {
    missing(joint, 'specification.service.pressure_MPa', 'pressure-missing', 'the register gives no design pressure.');
  }
  if (temperature_C === null) {
    missing(
      joint,
      'specification.service.temperature_C',
      'temperature-missing',
      'the register gives no design temperature.',
    );
  }
  const target = boltStress_MPa ?? procedure.policy.targetBoltStress_MPa;
  return {
    flange: flangeOf(joint, specification),
    gasket: {
      family: gasket.family,
      ...requireContact(joint, make),
      ...(gasket.count > 0 ? { count: gasket.count } : {}),
      limits: {
        seating_MPa: gasketData.seating_MPa,
        operating_MPa: gasketData.operating_MPa,
        target_MPa: gasketData.target_MPa,
        maximum_MPa: gasketData.maximum_MPa,
        source: gasketData.source,
      },
    },
    bolting: targetBolting(joint, make, procedure, grade),
    service: { pressure_MPa, temperature_C },
    lubricant: { nutFactor: lubricant.nutFactor, source: lubricant.source },
    method: procedure.method,
    area: procedure.policy.area,
    policy: {
      minimumBoltUtilisation: procedure.policy.minimumBoltUtilisation,
      maximumBoltUtilisation: procedure.policy.maximumBoltUtilisation,
      scatter_percent: procedure.policy.scatter_percent,
    },
    ...(tensioner === null
      ? {}
      : {
          clampedParts: clampedThicknesses(joint, make),
          tool: { hydraulicArea_mm2: tensioner.hydraulicArea_mm2 },
        }),
    ...(target === null ? {} : { target: { boltStress_MPa: target } }),
    passPercents: procedure.passPercents,
  };
}
