import { jointSpecification } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { emptyJoint, specificationOf } from './joint-draft.ts';
import { type JointLimits, limitsMissing, limitsOf, withoutFlange } from './joint-limits.ts';

const specified = (limits: JointLimits) =>
  jointSpecification.parse(
    specificationOf({ ...emptyJoint, size: 'NPS10', rating: '300', family: 'spiral-wound', limits }),
  );

const all: JointLimits = {
  testPressure_MPa: 7.7,
  ribArea_mm2: 0,
  axialForce_N: 12_000,
  moment_Nm: 0,
  loadSource: 'stress analysis',
  assembly_C: 20,
  startBolt_C: 90,
  startFlange_C: 140,
  flangeExpansion_ppmK: 12,
  expansionSource: 'material standard',
  flangeStiffness_kNmm: 9000,
  gasketStiffness_kNmm: 3000,
  stiffnessSource: 'drawing',
  strengthKind: 'loose',
  outside_mm: 445,
  allowableAmbient_MPa: 138,
  allowableOperating_MPa: 130,
  modulusAmbient_MPa: 202_000,
  modulusOperating_MPa: 195_000,
  strengthSource: 'drawing',
  flangeMaximum_MPa: 400,
  flangeMaximumSource: 'flange study',
};

describe('further limits of a joint as they are typed in', () => {
  test('what is left empty leaves no trace: old targets of the joint stay in force', () => {
    const { flange, gasket, service } = specified({});
    for (const name of ['strength', 'maximum']) expect(flange).not.toHaveProperty(name);
    expect(gasket).not.toHaveProperty('ribArea_mm2');
    for (const name of ['testPressure_MPa', 'external', 'temperatures']) expect(service).not.toHaveProperty(name);
    expect(limitsMissing({}, false)).toBeUndefined();
  });

  test('what is said is what the API takes, and comes back into the form as it was', () => {
    expect(limitsMissing(all, false)).toBeUndefined();
    const specification = specified(all);
    expect(specification.service).toMatchObject({
      external: { axialForce_N: 12_000, moment_Nm: 0 },
      temperatures: { goingUp: { bolt_C: 90, flange_C: 140 }, comingDown: null },
    });
    expect(specification.service.temperatures?.flangeExpansion_perK).toBeCloseTo(1.2e-5, 12);
    expect(specification.gasket.ribArea_mm2).toBe(0);
    expect(limitsOf(specification)).toMatchObject(all);
    expect(withLimitsTwice(specification)).toEqual(specification);
  });

  test('half of it is not sent', () => {
    expect(limitsMissing({ axialForce_N: 12_000 }, false)).toBe('loads-incomplete');
    expect(limitsMissing({ ...all, startFlange_C: undefined }, false)).toBe('temperatures-incomplete');
    expect(limitsMissing({ assembly_C: 20, flangeExpansion_ppmK: 12, expansionSource: 'x' }, false)).toBe(
      'temperatures-incomplete',
    );
    expect(limitsMissing({ ...all, strengthSource: ' ' }, false)).toBe('strength-incomplete');
    expect(limitsMissing(all, true)).toBe('strength-incomplete');
    expect(limitsMissing({ flangeMaximum_MPa: 400 }, false)).toBe('flange-maximum-incomplete');
  });

  test('another flange keeps the loads and loses the strength', () => {
    const kept = withoutFlange(all);
    expect(kept).toMatchObject({ axialForce_N: 12_000, startBolt_C: 90, ribArea_mm2: 0 });
    expect(specified(kept).flange).not.toHaveProperty('strength');
    expect(specified(kept).flange).not.toHaveProperty('maximum');
  });
});

function withLimitsTwice(specification: ReturnType<typeof specified>) {
  return specified(limitsOf(specification));
}
