import { describe, expect, it } from 'vitest';
import { integralHubFactors, looseHubFactors } from '../src/code-loads/hub-factors.ts';
import { CalcRefusal, flangeStress, gasketLoads } from '../src/index.ts';

describe('hub factors', () => {
  it('reach the values of a straight hub: F 0.90892, V 0.55010, f 1 (VIII-1 App. 2, from memory)', () => {
    const { F, V, f } = integralHubFactors(1, 0.3);
    expect(F).toBeCloseTo(0.90892, 4);
    expect(V).toBeCloseTo(0.5501, 4);
    expect(f).toBe(1);
  });

  it('of loose and integral hubs meet when the hub is long', () => {
    const integral = integralHubFactors(1.5, 3);
    const loose = looseHubFactors(1.5, 3);
    expect(loose.F / integral.F).toBeCloseTo(1, 1);
    expect(loose.V / integral.V).toBeCloseTo(1, 1);
  });

  it('raise the stress at the small end for a short steep hub', () => {
    expect(integralHubFactors(2, 0.3).f).toBeGreaterThan(1.2);
    expect(looseHubFactors(2, 0.3).f).toBe(1);
  });
});

describe('gasket loads', () => {
  const gasket = { gasketOutside_mm: 400, gasketInside_mm: 360, m: 3, y_MPa: 69, pressure_MPa: 2 };

  it('move the reaction outwards once the gasket is wide', () => {
    const wide = gasketLoads(gasket);
    expect(wide.effectiveWidth_mm).toBeCloseTo(2.52 * Math.sqrt(10), 9);
    expect(wide.reactionDiameter_mm).toBeCloseTo(400 - 2 * wide.effectiveWidth_mm, 9);
    const narrow = gasketLoads({ ...gasket, gasketInside_mm: 380 });
    expect(narrow).toMatchObject({ effectiveWidth_mm: 5, reactionDiameter_mm: 390 });
  });

  it('put force and moment in the gasket term only when asked, and say which form was used', () => {
    const loaded = { ...gasket, axialForce_N: 10_000, moment_Nm: 3000 };
    const plain = gasketLoads(loaded);
    const both = gasketLoads({ ...loaded, equivalentPressureInGasketTerm: true });
    expect(plain.equivalentPressure_MPa).toBeGreaterThan(2);
    expect(both.gasketOperatingLoad_N / plain.gasketOperatingLoad_N).toBeCloseTo(plain.equivalentPressure_MPa / 2, 9);
    expect(plain.warnings.map(({ code }) => code)).toEqual(['equivalent-pressure-form']);
    expect(both.warnings).toEqual([]);
  });

  it('warn when compression is counted on', () => {
    const { warnings } = gasketLoads({ ...gasket, axialForce_N: -5000 });
    expect(warnings.map(({ code }) => code)).toContain('compression-counted');
  });

  it('refuse a gasket inside out and a negative pressure', () => {
    expect(() => gasketLoads({ ...gasket, gasketInside_mm: 410 })).toThrow(CalcRefusal);
    expect(() => gasketLoads({ ...gasket, pressure_MPa: -1 })).toThrow(CalcRefusal);
  });
});

describe('flange stresses', () => {
  const request = {
    kind: 'loose',
    outsideDiameter_mm: 596,
    insideDiameter_mm: 420,
    boltCircle_mm: 540,
    thickness_mm: 47,
    loads: {
      reactionDiameter_mm: 447,
      equivalentPressure_MPa: 0.5,
      operatingBoltLoad_N: 114_000,
      seatingDesignLoad_N: 529_000,
    },
    allowables: {
      flangeOperating_MPa: 138,
      flangeSeating_MPa: 138,
      elasticModulusOperating_MPa: 190_000,
      elasticModulusSeating_MPa: 200_000,
    },
  } as const;

  it('have only a tangential part without a hub, which falls with the square of the thickness', () => {
    const thin = flangeStress(request);
    const thick = flangeStress({ ...request, thickness_mm: 94 });
    expect(thin).toMatchObject({ longitudinalHub_MPa: 0, radial_MPa: 0 });
    expect(thin.tangential_MPa / thick.tangential_MPa).toBeCloseTo(4, 9);
    expect(thin.rigidityJ / thick.rigidityJ).toBeCloseTo(8, 9);
  });

  it('are not accepted when one of them is above its allowable, or when the flange is too limber', () => {
    const { ok, tangential_MPa, rigidityJ } = flangeStress(request);
    expect(ok).toBe(tangential_MPa <= 138 && rigidityJ <= 1);
    const index = flangeStress({ ...request, thickness_mm: 120 }).seating.rigidityJ;
    const judged = (share: number) =>
      flangeStress({
        ...request,
        thickness_mm: 120,
        allowables: { ...request.allowables, elasticModulusSeating_MPa: 200_000 * index * share },
      }).seating.ok;
    expect([judged(1.001), judged(0.999)]).toEqual([true, false]);
    expect(flangeStress({ ...request, thickness_mm: 20 }).ok).toBe(false);
    expect(flangeStress({ ...request, thickness_mm: 120 }).ok).toBe(true);
  });

  it('do not depend on the units: doubling all loads doubles stress and rigidity index', () => {
    const doubled = flangeStress({
      ...request,
      loads: {
        reactionDiameter_mm: 447,
        equivalentPressure_MPa: 1,
        operatingBoltLoad_N: 228_000,
        seatingDesignLoad_N: 1_058_000,
      },
    });
    expect(doubled.rigidityJ / flangeStress(request).rigidityJ).toBeCloseTo(2, 9);
  });

  it.each([
    [{ boltCircle_mm: 400 }, 'flange-impossible'],
    [{ loads: { ...request.loads, reactionDiameter_mm: 700 } }, 'gasket-impossible'],
    [{ kind: 'integral' as const }, 'hub-must-be-given'],
    [{ hub: { length_mm: 20, smallThickness_mm: 12, largeThickness_mm: 8 } }, 'hub-impossible'],
    [{ thickness_mm: 0 }, 'out-of-range'],
  ])('refuse %j: %s', (change, code) => {
    expect(() => flangeStress({ ...request, ...change })).toThrow(expect.objectContaining({ code }) as CalcRefusal);
  });
});

describe('a flange is accepted by its worst criterion', () => {
  const base = {
    outsideDiameter_mm: 620,
    insideDiameter_mm: 420,
    boltCircle_mm: 560,
    loads: {
      reactionDiameter_mm: 470,
      equivalentPressure_MPa: 2,
      operatingBoltLoad_N: 600_000,
      seatingDesignLoad_N: 700_000,
    },
  };
  const judge = (
    shape: { t: number; g0: number; g1: number; h: number; C?: number },
    allowable_MPa: number,
    modulus_MPa: number,
  ) =>
    flangeStress({
      ...base,
      boltCircle_mm: shape.C ?? base.boltCircle_mm,
      kind: 'integral',
      thickness_mm: shape.t,
      hub: { length_mm: shape.h, smallThickness_mm: shape.g0, largeThickness_mm: shape.g1 },
      allowables: {
        flangeOperating_MPa: 1e6,
        flangeSeating_MPa: allowable_MPa,
        elasticModulusOperating_MPa: 1e9,
        elasticModulusSeating_MPa: modulus_MPa,
      },
    });

  const governing = new Set<string>();
  // Stocky and slender hubs, thin and thick rings, so that different criteria govern.
  it.each([
    { t: 60, g0: 6, g1: 9, h: 40 },
    { t: 30, g0: 20, g1: 40, h: 80 },
    { t: 90, g0: 12, g1: 14, h: 60 },
    { t: 25, g0: 8, g1: 12, h: 30 },
    { t: 45, g0: 12, g1: 25, h: 70 },
    { t: 20, g0: 25, g1: 45, h: 90 },
    { t: 10, g0: 3, g1: 3.9, h: 20, C: 480 },
  ])('%j', (shape) => {
    const { longitudinalHub_MPa: hub, radial_MPa: radial, tangential_MPa: tangential } = judge(shape, 1e6, 1e9).seating;
    const needs = {
      hub: hub / 1.5,
      radial,
      tangential,
      'hub and radial': (hub + radial) / 2,
      'hub and tangential': (hub + tangential) / 2,
    };
    const need = Math.max(...Object.values(needs));
    governing.add(Object.entries(needs).find(([, value]) => value === need)?.[0] ?? '');
    expect(judge(shape, need * 1.001, 1e9).ok).toBe(true);
    expect(judge(shape, need * 0.999, 1e9).ok).toBe(false);
  });

  it('where more than one kind governs', () => {
    expect(governing.size).toBeGreaterThanOrEqual(3);
    expect([...governing]).toContain('hub');
  });

  it('and by its rigidity index of 1', () => {
    const shape = { t: 45, g0: 12, g1: 25, h: 70 };
    const index = judge(shape, 1e6, 200_000).seating.rigidityJ;
    expect(judge(shape, 1e6, 200_000 * index * 1.001).ok).toBe(true);
    expect(judge(shape, 1e6, 200_000 * index * 0.999).ok).toBe(false);
  });
});

describe('the border of a wide gasket', () => {
  it('is a basic width of 6.35 mm', () => {
    const ring = (basicWidth_mm: number) =>
      gasketLoads({ gasketOutside_mm: 400, gasketInside_mm: 400 - 4 * basicWidth_mm, m: 1, y_MPa: 1, pressure_MPa: 1 });
    expect(ring(6.35).effectiveWidth_mm).toBeCloseTo(6.35, 9);
    expect(ring(6.36).effectiveWidth_mm).toBeCloseTo(2.52 * Math.sqrt(6.36), 9);
    expect(ring(6.34).effectiveWidth_mm).toBeCloseTo(6.34, 9);
  });
});
