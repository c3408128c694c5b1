import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CalcRefusal, type TargetRequest, type ThermalInput, targetWindow, threadGeometry } from '../src/index.ts';
import { EXAMPLE_TARGET } from './example-joints.ts';

const PARTS = [
  { kind: 'flange', thickness_mm: 42.7 },
  { kind: 'gasket', thickness_mm: 3.2 },
  { kind: 'flange', thickness_mm: 42.7 },
];
const E = 205_000;
const joint = (thermal: Partial<ThermalInput>, more: Partial<TargetRequest> = {}): TargetRequest => ({
  ...EXAMPLE_TARGET,
  clampedParts: PARTS,
  bolting: { ...EXAMPLE_TARGET.bolting, elasticModulus_MPa: E },
  ...more,
  service: {
    ...EXAMPLE_TARGET.service,
    thermal: {
      assemblyTemperature_C: 20,
      states: [],
      boltExpansion_perK: 1.2e-5,
      flangeExpansion_perK: 1.2e-5,
      source: 'test data',
      ...thermal,
    },
  },
});
const hotFlange = { name: 'start-up', boltTemperature_C: 70, flangeTemperature_C: 120 };
const hotBolts = { name: 'rain on the flange', boltTemperature_C: 120, flangeTemperature_C: 90 };
const { tensileStressArea_mm2: At, rootArea_mm2: Ar, nominalDiameter_mm } = threadGeometry({ thread: '7/8-9 UNC' });
const grip = 42.7 * 2 + 3.2;
// Heavy hex nut of 7/8 in: at most 0.885 in high (ASME B18.2.2).
const effective = grip + 0.885 * 25.4;
const limits = (request: TargetRequest) => {
  const { window } = targetWindow(request);
  return Object.fromEntries([...window.lower, ...window.upper].map((limit) => [limit.name, limit.boltStress_MPa]));
};
const refused = (request: TargetRequest) => {
  try {
    targetWindow(request);
  } catch (error) {
    if (error instanceof CalcRefusal) return error.errors.map(({ code, path }) => `${code} ${path}`);
    throw error;
  }
  return [];
};

describe('flanges hotter than their bolts', () => {
  it('stretch the bolts: yield and crushing leave less room, by E·α·ΔT over the clamped length', () => {
    const all = limits(joint({ states: [hotFlange] }));
    const plain = limits(EXAMPLE_TARGET);
    const gain = (E * 1.2e-5 * 50 * grip * At) / effective / Ar;
    expect(nominalDiameter_mm).toBeCloseTo(22.225, 9);
    expect((plain['gasket-maximum'] ?? 0) - (all['gasket-thermal-gain'] ?? 0)).toBeCloseTo(gain, 6);
    // bolt-yield is yield over torsion and scatter: so is what the gain takes from it.
    const overYield = (720 * At) / Ar / (plain['bolt-yield'] ?? 0);
    expect((plain['bolt-yield'] ?? 0) - (all['bolt-thermal-gain'] ?? 0)).toBeCloseTo(gain / overYield, 6);
    expect(all['gasket-thermal-loss']).toBeUndefined();
  });

  it('take less of it where the clamped parts give way', () => {
    const stiffness = { flanges_N_per_mm: 8e6, gaskets_N_per_mm: 2e6, source: 'test data' };
    const stiff = limits(joint({ states: [hotFlange] }));
    const soft = limits(joint({ states: [hotFlange], stiffness }));
    const bolts = (12 * E * At) / effective;
    const share = 1 / (1 + bolts * (1 / 8e6 + 1 / 2e6));
    const plain = limits(EXAMPLE_TARGET)['gasket-maximum'] ?? 0;
    expect((plain - (soft['gasket-thermal-gain'] ?? 0)) / (plain - (stiff['gasket-thermal-gain'] ?? 0))).toBeCloseTo(
      share,
      9,
    );
  });

  it('are refused where the difference alone is more than bolt and gasket bear', () => {
    const far = { name: 'upset', boltTemperature_C: 20, flangeTemperature_C: 500 };
    expect(refused(joint({ states: [far] }))).toEqual(['thermal-gain-too-high service.thermal']);
  });
});

describe('bolts hotter than their flanges', () => {
  it('let go: what must be left after relaxation is asked for beside what is lost', () => {
    const all = limits(joint({ states: [hotBolts] }));
    const loss = (E * 1.2e-5 * 30 * grip * At) / effective / Ar;
    expect((all['gasket-thermal-loss'] ?? 0) - (all['gasket-operating'] ?? 0)).toBeCloseTo(loss / 0.7, 6);
    expect(all['bolt-thermal-gain']).toBeUndefined();
  });

  it('lose load with unlike metals at one temperature: stainless bolts in carbon steel', () => {
    const even = { name: 'in service', boltTemperature_C: 220, flangeTemperature_C: 220 };
    const all = limits(joint({ states: [even], boltExpansion_perK: 1.7e-5 }));
    const loss = (E * 0.5e-5 * 200 * grip * At) / effective / Ar;
    expect((all['gasket-thermal-loss'] ?? 0) - (all['gasket-operating'] ?? 0)).toBeCloseTo(loss / 0.7, 5);
  });
});

describe('a temperature difference', () => {
  it('takes the worst of its states on either side', () => {
    const both = limits(joint({ states: [hotFlange, hotBolts, { ...hotFlange, flangeTemperature_C: 80 }] }));
    expect(both['bolt-thermal-gain']).toBe(limits(joint({ states: [hotFlange] }))['bolt-thermal-gain']);
    expect(both['gasket-thermal-loss']).toBe(limits(joint({ states: [hotBolts] }))['gasket-thermal-loss']);
  });

  it('of nothing changes nothing', () => {
    const calm = { name: 'even', boltTemperature_C: 90, flangeTemperature_C: 90 };
    const without = limits(EXAMPLE_TARGET);
    expect(limits(joint({ states: [calm] }))).toEqual(without);
  });

  it('narrows the window the more, the larger it is', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 60, noNaN: true }), fc.double({ min: 1, max: 60, noNaN: true }), (a, b) => {
        const at = (difference_K: number) =>
          limits(joint({ states: [{ name: 's', boltTemperature_C: 50, flangeTemperature_C: 50 + difference_K }] }));
        const [less, more] = a < b ? [at(a), at(b)] : [at(b), at(a)];
        expect(more['bolt-thermal-gain']).toBeLessThanOrEqual(less['bolt-thermal-gain'] ?? 0);
        expect(more['gasket-thermal-gain']).toBeLessThanOrEqual(less['gasket-thermal-gain'] ?? 0);
      }),
    );
  });

  it('says when clamped parts were taken as rigid', () => {
    const codes = (request: TargetRequest) => targetWindow(request).warnings.map(({ code }) => code);
    expect(codes(joint({ states: [hotFlange] }))).toContain('thermal-conservative');
    const stiffness = { flanges_N_per_mm: 8e6, gaskets_N_per_mm: 2e6, source: 'test data' };
    expect(codes(joint({ states: [hotFlange], stiffness }))).not.toContain('thermal-conservative');
  });

  it('names slower start-up and longer bolts where it closes the window', () => {
    const steep = { name: 'upset', boltTemperature_C: 20, flangeTemperature_C: 130 };
    const request = joint({ states: [steep] }, { policy: { ...EXAMPLE_TARGET.policy, minimumBoltUtilisation: 0.55 } });
    const { window } = targetWindow(request);
    expect(window.open).toBe(false);
    expect(window.remedies?.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['temperature-difference', 'tool-and-friction']),
    );
  });

  it('needs clamped parts, modulus and sources, and names all that is missing', () => {
    const { clampedParts: _parts, ...bare } = joint({ states: [hotFlange], source: '' });
    expect(refused({ ...bare, bolting: EXAMPLE_TARGET.bolting })).toEqual([
      'source-missing service.thermal.source',
      'clamped-parts-missing clampedParts',
      'elastic-modulus-missing bolting.elasticModulus_MPa',
    ]);
    const stiffness = { flanges_N_per_mm: 8e6, gaskets_N_per_mm: 2e6, source: ' ' };
    expect(refused(joint({ states: [hotFlange], stiffness }))).toEqual([
      'source-missing service.thermal.stiffness.source',
    ]);
  });

  it('refuses expansions in the wrong unit', () => {
    expect(refused(joint({ states: [hotFlange], boltExpansion_perK: 12 }))).toEqual([
      'out-of-range service.thermal.boltExpansion_perK',
    ]);
    expect(refused(joint({ states: [] }))).toEqual(['out-of-range service.thermal.states']);
  });
});
