import type { TargetRequest } from '@seatwell/calc';
import type { Payload, ProcedureContent } from '@seatwell/contract';
import { gasketOf, given, type JointState, type MakeState } from '@seatwell/workflow';
import { Problem } from '../../platform/errors/problem.ts';
import { stretchedParts } from './elongation.ts';
import { type GasketContact, gasketContact } from './gasket-contact.ts';
import { targetBolting } from './target-bolting.ts';
import { flangeLimits, knownThicknesses, serviceLoads } from './target-joint.ts';
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

function flangeOf(joint: JointState, gasketData: GasketData): TargetRequest['flange'] {
  const { flange } = joint.specification;
  const { standard, size, rating } = flange;
  const limits = flangeLimits(flange, gasketData);
  if (standard !== 'custom') {
    return { standard, size, rating, ...(joint.bolting ? { boltCount: joint.bolting.count } : {}), ...limits };
  }
  if (!joint.bolting)
    missing(joint, 'specification.bolting', 'bolting-missing', 'a custom flange needs its bolt count and thread.');
  return { custom: { boltCount: joint.bolting.count, boltThread: joint.bolting.thread }, ...limits };
}

/** The clamped parts where the calculation needs them: it refuses without, but for temperatures, which are left out. */
function clampedFor(joint: JointState, make: MakeState, procedure: ProcedureContent, tensioner: Tensioner | null) {
  if (tensioner) return clampedThicknesses(joint, make);
  if (procedure.method === 'elongation') return stretchedParts(joint, make, procedure);
  if (!joint.specification.service.temperatures || !procedure.bolts?.material?.expansion_perK) return null;
  return knownThicknesses(joint, make);
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
  const clampedParts = clampedFor(joint, make, procedure, tensioner);
  const expansion_perK = clampedParts ? (procedure.bolts?.material?.expansion_perK ?? null) : null;
  const target = boltStress_MPa ?? procedure.policy.targetBoltStress_MPa;
  return {
    flange: flangeOf(joint, gasketData),
    gasket: {
      family: gasket.family,
      ...requireContact(joint, make),
      ...(gasket.count > 0 ? { count: gasket.count } : {}),
      ...given('ribArea_mm2', gasket.ribArea_mm2),
      limits: {
        seating_MPa: gasketData.seating_MPa,
        operating_MPa: gasketData.operating_MPa,
        target_MPa: gasketData.target_MPa,
        maximum_MPa: gasketData.maximum_MPa,
        source: gasketData.source,
      },
    },
    bolting: targetBolting(joint, make, procedure, grade),
    service: { pressure_MPa, temperature_C, ...serviceLoads(specification.service, expansion_perK) },
    lubricant: { nutFactor: lubricant.nutFactor, source: lubricant.source },
    method: procedure.method,
    area: procedure.policy.area,
    policy: {
      minimumBoltUtilisation: procedure.policy.minimumBoltUtilisation,
      maximumBoltUtilisation: procedure.policy.maximumBoltUtilisation,
      scatter_percent: procedure.policy.scatter_percent,
    },
    ...given('clampedParts', clampedParts),
    ...(tensioner === null ? {} : { tool: { hydraulicArea_mm2: tensioner.hydraulicArea_mm2 } }),
    ...(target === null ? {} : { target: { boltStress_MPa: target } }),
    passPercents: procedure.passPercents,
  };
}
