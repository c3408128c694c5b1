import { describe, expect, it } from 'vitest';
import {
  CalcRefusal,
  findFlange,
  flangeStress,
  gasketLoads,
  type TargetRequest,
  targetWindow,
  threadGeometry,
  weldNeckHub,
} from '../src/index.ts';
import { stressShare } from '../src/target/flange-at-target.ts';
import { EXAMPLE_TARGET } from './example-joints.ts';

const ALLOWED = {
  allowableAmbient_MPa: 138,
  allowableOperating_MPa: 120,
  elasticModulusAmbient_MPa: 200_000,
  elasticModulusOperating_MPa: 185_000,
  source: 'test data',
} as const;
const RATED: TargetRequest = {
  ...EXAMPLE_TARGET,
  flange: { ...EXAMPLE_TARGET.flange, strength: { kind: 'integral', ...ALLOWED } },
};
const CUSTOM: TargetRequest = {
  ...EXAMPLE_TARGET,
  flange: {
    custom: { boltCount: 12, boltThread: '7/8-9 UNC', boltHole_mm: 25.4, boltCircle_mm: 330.2, thickness_mm: 41.1 },
    strength: {
      kind: 'integral',
      outsideDiameter_mm: 381,
      insideDiameter_mm: 202.7,
      hub: { length_mm: 70, smallThickness_mm: 8.2, largeThickness_mm: 28 },
      ...ALLOWED,
    },
  },
};
const upper = (request: TargetRequest) => targetWindow(request).window.upper;
const limitOf = (request: TargetRequest, name: string) => {
  const found = upper(request).find((limit) => limit.name === name);
  if (found === undefined) throw new Error(`no limit ${name}`);
  return found.boltStress_MPa;
};
const codesOf = (request: TargetRequest) => {
  try {
    return targetWindow(request).warnings.map(({ code }) => code);
  } catch (error) {
    if (error instanceof CalcRefusal) return error.errors.map(({ code, path }) => `${code} ${path}`);
    throw error;
  }
};
const boltArea_mm2 = 12 * threadGeometry({ thread: '7/8-9 UNC' }).rootArea_mm2;

/** The flange of CUSTOM by itself, under a bolt load and the pressure of the service. */
function stressAt(request: TargetRequest, boltStress_MPa: number, pressure_MPa: number) {
  const { gasket, service } = request;
  const { reactionDiameter_mm, equivalentPressure_MPa } = gasketLoads({
    gasketOutside_mm: gasket.contactOutside_mm,
    gasketInside_mm: gasket.contactInside_mm,
    m: 0,
    y_MPa: 0,
    pressure_MPa,
    axialForce_N: service.axialForce_N ?? 0,
    moment_Nm: service.moment_Nm ?? 0,
  });
  const load_N = boltStress_MPa * boltArea_mm2;
  return flangeStress({
    kind: 'integral',
    outsideDiameter_mm: 381,
    insideDiameter_mm: 202.7,
    boltCircle_mm: 330.2,
    thickness_mm: 41.1,
    hub: { length_mm: 70, smallThickness_mm: 8.2, largeThickness_mm: 28 },
    loads: {
      reactionDiameter_mm,
      equivalentPressure_MPa,
      operatingBoltLoad_N: load_N,
      seatingDesignLoad_N: load_N,
    },
    allowables: {
      flangeOperating_MPa: 120,
      flangeSeating_MPa: 138,
      elasticModulusOperating_MPa: 185_000,
      elasticModulusSeating_MPa: 200_000,
    },
  });
}
const mostOf = (state: { longitudinalHub_MPa: number; radial_MPa: number; tangential_MPa: number }) =>
  Math.max(
    state.longitudinalHub_MPa / 1.5,
    state.radial_MPa,
    state.tangential_MPa,
    (state.longitudinalHub_MPa + state.radial_MPa) / 2,
    (state.longitudinalHub_MPa + state.tangential_MPa) / 2,
  );

describe('the stresses of the flange in the window', () => {
  it('stand exactly at the allowable under the bolt stress of the limit', () => {
    const assembly = limitOf(CUSTOM, 'flange-stress-assembly');
    expect(mostOf(stressAt(CUSTOM, assembly, 0).seating)).toBeCloseTo(138, 6);
    const operating = limitOf(CUSTOM, 'flange-stress-operating');
    expect(mostOf(stressAt(CUSTOM, operating, 3).operating)).toBeCloseTo(120, 6);
    const rigid = stressAt(CUSTOM, limitOf(CUSTOM, 'flange-rigidity'), 3);
    expect(Math.max(rigid.operating.rigidityJ, rigid.seating.rigidityJ)).toBeCloseTo(1, 9);
  });

  it('count external force and moment in operation', () => {
    const service = { ...CUSTOM.service, axialForce_N: 40_000, moment_Nm: 6000 };
    const loaded = { ...CUSTOM, service };
    const limit = limitOf(loaded, 'flange-stress-operating');
    expect(limit).toBeLessThan(limitOf(CUSTOM, 'flange-stress-operating'));
    expect(mostOf(stressAt(loaded, limit, 3).operating)).toBeCloseTo(120, 6);
    expect(limitOf(loaded, 'flange-stress-assembly')).toBeCloseTo(limitOf(CUSTOM, 'flange-stress-assembly'), 9);
  });

  it('are checked at the test pressure against the ambient allowable', () => {
    const tested = { ...CUSTOM, service: { ...CUSTOM.service, testPressure_MPa: 6 } };
    const limit = limitOf(tested, 'flange-stress-test');
    expect(mostOf(stressAt(tested, limit, 6).operating)).toBeCloseTo(138, 6);
  });

  it('govern a custom flange', () => {
    const answer = targetWindow(CUSTOM);
    expect(answer.window.upper.filter(({ name }) => name.startsWith('flange')).every((l) => !l.advisory)).toBe(true);
    const lowest = answer.window.upper.reduce((a, b) => (b.boltStress_MPa < a.boltStress_MPa ? b : a));
    expect(lowest.name).toMatch(/^flange/);
    expect(answer.target).toMatchObject({ governedBy: lowest.name, boltStress_MPa: lowest.boltStress_MPa });
    expect(answer.window.remedies?.map(({ code }) => code) ?? []).toEqual(
      answer.window.open ? [] : expect.arrayContaining(['flange']),
    );
    expect(codesOf(CUSTOM)).not.toContain('flange-strength-not-checked');
  });

  it('are advisory for a flange rated by its standard: shown and warned about, never binding', () => {
    const answer = targetWindow(RATED);
    const own = answer.window.upper.filter(({ name }) => name.startsWith('flange'));
    expect(own.map(({ name }) => name)).toEqual([
      'flange-stress-assembly',
      'flange-stress-operating',
      'flange-rigidity',
    ]);
    expect(own.every(({ advisory }) => advisory === true)).toBe(true);
    expect(answer.target).toEqual(targetWindow(EXAMPLE_TARGET).target);
    const weak = {
      ...RATED,
      flange: { ...RATED.flange, strength: { kind: 'integral', ...ALLOWED, allowableAmbient_MPa: 30 } },
    } as const;
    expect(codesOf(weak)).toContain('above-code-advisory');
  });

  it('take what is not given of a rated flange from the tables of flange and hub', () => {
    const listed = findFlange({ standard: 'ASME-B16.5', size: 'NPS8', rating: '300' });
    const hub = weldNeckHub({ standard: 'ASME-B16.5', size: 'NPS8', rating: '300' });
    const entered = {
      ...RATED,
      flange: {
        ...RATED.flange,
        strength: {
          kind: 'integral',
          ...ALLOWED,
          outsideDiameter_mm: listed.outsideDiameter_mm,
          insideDiameter_mm: hub.bore_mm,
          boltCircle_mm: listed.boltCircle_mm,
          thickness_mm: listed.thickness_mm,
          hub: {
            length_mm: hub.lengthThroughHub_mm - hub.flangeThickness_mm,
            smallThickness_mm: hub.wall_mm,
            largeThickness_mm: (hub.hubBase_mm - hub.bore_mm) / 2,
          },
        },
      },
    } as const;
    expect(upper(entered)).toEqual(upper(RATED));
  });

  it('leave the raised face out of the thickness where the standard counts it', () => {
    const en = (strength: object): TargetRequest => ({
      ...EXAMPLE_TARGET,
      flange: {
        standard: 'EN-1092-1',
        size: 'DN200',
        rating: 'PN16',
        strength: { kind: 'loose', insideDiameter_mm: 221, ...ALLOWED, ...strength },
      },
      bolting: { grade: '8.8', condition: 'new' },
    });
    expect(limitOf(en({ thickness_mm: 24 - 3 }), 'flange-stress-assembly')).toBeCloseTo(
      limitOf(en({}), 'flange-stress-assembly'),
      9,
    );
  });

  it('are answered at the target', () => {
    const answer = targetWindow(CUSTOM);
    const [assembly, operating] = answer.flangeStress ?? [];
    const { boltStress_MPa } = answer.target;
    const alone = stressAt(CUSTOM, boltStress_MPa, 3);
    expect(assembly).toMatchObject({ case: 'assembly' });
    expect(assembly?.longitudinalHub_MPa).toBeCloseTo(alone.seating.longitudinalHub_MPa, 6);
    expect(operating?.tangential_MPa).toBeCloseTo(alone.operating.tangential_MPa, 6);
    expect(operating?.radial_MPa).toBeCloseTo(alone.operating.radial_MPa, 6);
    expect(operating?.rigidityJ).toBeCloseTo(alone.operating.rigidityJ, 9);
    expect(operating?.rotation_deg).toBeCloseTo(alone.operating.rigidityJ * 0.3, 9);
  });

  it('are refused where a dimension is missing, naming each', () => {
    const { strength: _gone, ...flange } = CUSTOM.flange;
    const bare = { ...CUSTOM, flange: { ...flange, strength: { kind: 'integral', ...ALLOWED } } } as TargetRequest;
    expect(codesOf(bare)).toEqual([
      'flange-dimensions-missing flange.strength.outsideDiameter_mm',
      'flange-dimensions-missing flange.strength.insideDiameter_mm',
      'flange-dimensions-missing flange.strength.hub',
    ]);
  });

  it('name the inputs of the target when the geometry is impossible', () => {
    const wide = {
      ...CUSTOM,
      gasket: { ...CUSTOM.gasket, contactOutside_mm: 420, contactInside_mm: 400 },
    };
    expect(codesOf(wide)).toEqual(['gasket-impossible gasket.contactOutside_mm']);
  });

  it('refuse a flange that pressure alone overloads, and only warn when it is rated', () => {
    const high = { ...CUSTOM, service: { ...CUSTOM.service, pressure_MPa: 60 } };
    expect(codesOf(high)).toEqual(['flange-overloaded-by-pressure flange.strength']);
    const rated = codesOf({ ...RATED, service: { ...RATED.service, pressure_MPa: 60 } });
    expect(rated).toContain('flange-overloaded-by-pressure');
  });
});

describe('what the code allows', () => {
  const share = (longitudinalHub_MPa: number, radial_MPa: number, tangential_MPa: number) =>
    stressShare({ longitudinalHub_MPa, radial_MPa, tangential_MPa, rigidityJ: 0, ok: true }, 100);

  it('is the allowable, one and a half of it in the hub, and the means with the hub (2-8)', () => {
    expect(share(150, 0, 0)).toBeCloseTo(1, 9);
    expect(share(0, 100, 0)).toBeCloseTo(1, 9);
    expect(share(0, 0, 100)).toBeCloseTo(1, 9);
    expect(share(120, 80, 0)).toBeCloseTo(1, 9);
    expect(share(120, 0, 80)).toBeCloseTo(1, 9);
  });

  const allowedAt = (request: TargetRequest, boltStress_MPa: number) =>
    targetWindow({ ...request, target: { boltStress_MPa } }).flangeStress?.find((one) => one.case === 'assembly')?.ok;

  it('is kept up to the limit and not beyond, by stress as by rigidity', () => {
    const stress = limitOf(CUSTOM, 'flange-stress-assembly');
    expect([allowedAt(CUSTOM, stress * 0.995), allowedAt(CUSTOM, stress * 1.005)]).toEqual([true, false]);
    const soft = { ...ALLOWED, elasticModulusAmbient_MPa: 30_000, elasticModulusOperating_MPa: 400_000 };
    const strong = { ...soft, allowableAmbient_MPa: 2000, allowableOperating_MPa: 2000 };
    const request = {
      ...CUSTOM,
      flange: { ...CUSTOM.flange, strength: { ...CUSTOM.flange.strength, ...strong } },
    } as TargetRequest;
    const rigid = limitOf(request, 'flange-rigidity');
    expect([allowedAt(request, rigid * 0.995), allowedAt(request, rigid * 1.005)]).toEqual([true, false]);
  });
});

describe('the rotation of the flange', () => {
  const rotating = (rotation: object, more: object = {}): TargetRequest => ({
    ...EXAMPLE_TARGET,
    flange: { ...EXAMPLE_TARGET.flange, rotation: { source: 'test data', ...rotation }, ...more } as never,
  });
  const entered = { maximumBoltStress_MPa: 400, maximumBoltStressSource: 'flange analysis' };

  it('holds the bolt stress to Sfmax·φg/φf (PCC-1, from memory)', () => {
    const request = rotating({ gasketLimit_deg: 0.3, flangeAtMaximum_deg: 0.4 }, entered);
    expect(limitOf(request, 'flange-rotation')).toBeCloseTo(300, 9);
    expect(codesOf(request)).not.toContain('rotation-not-checked');
  });

  it('is computed from the rigidity where no rotation is entered, and binds a rated flange too', () => {
    const request = rotating({ gasketLimit_deg: 0.1 }, { strength: { kind: 'integral', ...ALLOWED } });
    const limit = upper(request).find(({ name }) => name === 'flange-rotation');
    expect(limit?.advisory).toBeUndefined();
    const at = targetWindow({ ...request, target: { boltStress_MPa: limit?.boltStress_MPa ?? 0 } });
    expect(Math.max(...(at.flangeStress ?? []).map(({ rotation_deg }) => rotation_deg))).toBeCloseTo(0.1, 9);
  });

  it('is refused without the flange that rotates, warned about when nobody gives a limit', () => {
    expect(codesOf(rotating({ gasketLimit_deg: 0.3 }))).toEqual([
      'rotation-needs-flange flange.rotation.flangeAtMaximum_deg',
    ]);
    expect(codesOf(rotating({ gasketLimit_deg: 0.3, flangeAtMaximum_deg: 0.4 }))).toEqual([
      'rotation-needs-flange flange.maximumBoltStress_MPa',
    ]);
    expect(codesOf(rotating({ gasketLimit_deg: 0.3, flangeAtMaximum_deg: 0.4, source: ' ' }, entered))).toEqual([
      'source-missing flange.rotation.source',
    ]);
    expect(codesOf(EXAMPLE_TARGET)).toContain('rotation-not-checked');
  });

  it('names a gasket that bears more rotation among the remedies', () => {
    const request = rotating({ gasketLimit_deg: 0.05, flangeAtMaximum_deg: 0.4 }, entered);
    const { window } = targetWindow(request);
    expect(window.open).toBe(false);
    expect(window.remedies?.map(({ code }) => code)).toEqual(expect.arrayContaining(['flange', 'gasket-rotation']));
  });
});
