import { describe, expect, it } from 'vitest';
import {
  CalcRefusal,
  crewTable,
  kitList,
  studLength,
  type TargetRequest,
  targetWindow,
  threadGeometry,
  washerOf,
} from '../src/index.ts';
import { EXAMPLE_TARGET } from './example-joints.ts';

const bolted = (bolting: Partial<TargetRequest['bolting']>, more: Partial<TargetRequest> = {}): TargetRequest => ({
  ...EXAMPLE_TARGET,
  ...more,
  bolting: { ...EXAMPLE_TARGET.bolting, ...bolting },
});
const codesOf = (request: TargetRequest) => targetWindow(request).warnings.map(({ code }) => code);
const refused = (run: () => unknown) => {
  try {
    run();
  } catch (error) {
    if (error instanceof CalcRefusal) return error.errors.map(({ code, path }) => `${code} ${path}`);
    throw error;
  }
  return [];
};

describe('washers', () => {
  const friction = { threadFriction: 0.12, bearingFriction: 0.12, source: 'test data' };
  const torque = (washers?: TargetRequest['bolting']['washers']) =>
    targetWindow(bolted(washers === undefined ? {} : { washers }, { lubricant: friction })).tool.torque_Nm ?? 0;

  it('change the torque by their bore: the nut turns on the washer, not on the hole', () => {
    const { boltLoad_N } = targetWindow(bolted({}, { lubricant: friction })).target;
    const wide = torque({ perBolt: 1, outsideDiameter_mm: 45, insideDiameter_mm: 23.8, thickness_mm: 4 });
    const bare = torque();
    // Hole of 7/8 in bolts 25.4 mm: the mean bearing diameter is less by half the difference of the bores.
    expect(bare - wide).toBeCloseTo(((boltLoad_N / 2) * 0.12 * ((25.4 - 23.8) / 2)) / 1000, 6);
  });

  it('smaller than the nut narrow the bearing face from outside too', () => {
    const { boltLoad_N } = targetWindow(bolted({}, { lubricant: friction })).target;
    const narrow = torque({ perBolt: 1, outsideDiameter_mm: 34, insideDiameter_mm: 25.4, thickness_mm: 4 });
    expect(torque() - narrow).toBeCloseTo(((boltLoad_N / 2) * 0.12 * ((36.51 - 34) / 2)) / 1000, 6);
  });

  it('leave a torque by nut factor alone', () => {
    const washers = { perBolt: 1 } as const;
    expect(targetWindow(bolted({ washers })).tool.torque_Nm).toBe(targetWindow(EXAMPLE_TARGET).tool.torque_Nm);
  });

  it('make the effective length longer, and so the elongation', () => {
    const clampedParts = [{ kind: 'stack', thickness_mm: 100 }];
    const stretch = (perBolt?: 1 | 2) => {
      const washers = perBolt === undefined ? {} : { washers: { perBolt, thickness_mm: 4 } };
      const request = bolted({ elasticModulus_MPa: 205_000, ...washers }, { clampedParts, method: 'elongation' });
      return targetWindow(request).tool.elongation_mm ?? 0;
    };
    const { tensileStressArea_mm2 } = threadGeometry({ thread: '7/8-9 UNC' });
    const { boltLoad_N } = targetWindow(EXAMPLE_TARGET).target;
    const perMillimetre = boltLoad_N / (205_000 * tensileStressArea_mm2);
    expect(stretch(1) - stretch()).toBeCloseTo(4 * perMillimetre, 9);
    expect(stretch(2) - stretch()).toBeCloseTo(8 * perMillimetre, 9);
  });

  it('come from a table that is from memory, and say so, unless all is entered', () => {
    expect(codesOf(bolted({ washers: { perBolt: 2 } }))).toContain('washer-from-memory');
    const own = { perBolt: 2, outsideDiameter_mm: 45, insideDiameter_mm: 24, thickness_mm: 4 } as const;
    expect(codesOf(bolted({ washers: own }))).not.toContain('washer-from-memory');
    // ISO 7089 and ASTM F436 (from memory).
    expect(washerOf({ thread: 'M20' }).washer).toMatchObject({ insideDiameter_mm: 21, outsideDiameter_mm: 37 });
    expect(washerOf({ thread: '1-8 UNC' }).washer).toMatchObject({ insideDiameter_mm: 28.6, outsideDiameter_mm: 50.8 });
  });

  it('are refused where nobody knows them or they do not go on the bolt', () => {
    expect(refused(() => washerOf({ thread: 'M100x6' }))).toEqual(['washer-data-missing washers']);
    const tight = { perBolt: 1, outsideDiameter_mm: 45, insideDiameter_mm: 20, thickness_mm: 4 } as const;
    expect(refused(() => targetWindow(bolted({ washers: tight })))).toEqual([
      'washer-impossible bolting.washers.insideDiameter_mm',
    ]);
  });

  it('are packed in the kit with their size, and make the stud longer', () => {
    const clampedParts = [
      { kind: 'flange', thickness_mm: 28 },
      { kind: 'gasket', thickness_mm: 3 },
      { kind: 'flange', thickness_mm: 28 },
    ];
    const kit = { thread: 'M20', boltCount: 8, grade: 'B7', nut: '2H', gasketDescription: 'g', clampedParts } as const;
    const lines = kitList({ ...kit, washersPerStud: 2 });
    expect(lines.find(({ item }) => item === 'washer')).toEqual({
      item: 'washer',
      quantity: 16,
      description: 'for M20, 21/37 × 3 mm',
    });
    const stud = studLength({ thread: 'M20', clampedParts, nutHeight_mm: 18, washers_mm: 6 }).length_mm;
    expect(lines.find(({ item }) => item === 'stud')?.description).toContain(`× ${stud} mm`);
    expect(refused(() => kitList({ ...kit, thread: 'M100x6', washersPerStud: 1 }))).toEqual([
      'washer-data-missing washer',
    ]);
  });
});

describe('the nut', () => {
  it('is refused where it does not go with the grade, with those that do', () => {
    expect(refused(() => targetWindow(bolted({ grade: 'B7M', nut: '2H' })))).toEqual(['nut-not-for-grade bolting.nut']);
    expect(refused(() => targetWindow(bolted({ grade: 'B7M', nut: 'A194 2HM' })))).toEqual([]);
    expect(refused(() => targetWindow(bolted({ nut: '2H' })))).toEqual([]);
  });

  it('of a grade without a table is left to the engineer, and that is said', () => {
    const own = { grade: 'A4-70', yield_MPa: 450, yieldSource: 'certificate', nut: 'A4-70' };
    expect(codesOf(bolted(own))).toContain('nut-not-checked');
  });
});

describe('a coating', () => {
  const hot = { service: { pressure_MPa: 3, temperature_C: 250 } };
  it('is refused above its temperature, and below it not', () => {
    const zinc = { condition: 'coated', coating: 'zinc' } as const;
    expect(refused(() => targetWindow(bolted(zinc, hot)))).toEqual(['coating-too-hot bolting.coating']);
    expect(refused(() => targetWindow(bolted(zinc)))).toEqual([]);
    const at = (temperature_C: number) => ({ service: { pressure_MPa: 3, temperature_C } });
    expect(refused(() => targetWindow(bolted(zinc, at(210))))).toEqual([]);
    expect(refused(() => targetWindow(bolted(zinc, at(211))))).toEqual(['coating-too-hot bolting.coating']);
  });

  it.each([
    ['zinc', 210],
    ['cadmium', 160],
    ['ptfe', 230],
    ['aluminium-ceramic', 590],
  ])('of %s is good to %i °C (common practice)', (coating, maximum_C) => {
    const at = (temperature_C: number) =>
      refused(() => targetWindow(bolted({ coating }, { service: { pressure_MPa: 3, temperature_C } })));
    expect(at(maximum_C)).toEqual([]);
    expect(at(maximum_C + 1)).toEqual(['coating-too-hot bolting.coating']);
  });

  it('follows its maker’s limit where one is entered with its source', () => {
    const own = { condition: 'coated', coating: 'ptfe', coatingMaximum_C: 260 } as const;
    expect(refused(() => targetWindow(bolted(own, hot)))).toEqual(['source-missing bolting.coatingSource']);
    expect(refused(() => targetWindow(bolted({ ...own, coatingSource: 'maker' }, hot)))).toEqual([]);
  });

  it('that nobody knows needs its limit; one without a name is warned about', () => {
    expect(refused(() => targetWindow(bolted({ condition: 'coated', coating: 'xylan' })))).toEqual([
      'coating-limit-missing bolting.coating',
    ]);
    expect(codesOf(bolted({ condition: 'coated' }))).toContain('coating-not-named');
  });
});

describe('weak and hardness-limited grades', () => {
  it('of 30 ksi yield are warned about in class 400 and above, and with hard gaskets', () => {
    const weak = { grade: 'B8 Class 1' };
    expect(codesOf(bolted(weak))).toContain('low-strength-with-hard-gasket');
    expect(codesOf(bolted(weak))).not.toContain('low-strength-in-high-class');
    const rated = (rating: string) => ({ flange: { standard: 'ASME-B16.5', size: 'NPS8', rating } });
    expect(codesOf(bolted(weak, rated('400')))).toContain('low-strength-in-high-class');
    expect(codesOf(bolted({ grade: 'B7' }, rated('600')))).not.toContain('low-strength-in-high-class');
  });

  it('limited in hardness say so', () => {
    expect(codesOf(bolted({ grade: 'B7M' }))).toContain('hardness-limited');
  });
});

describe('two gaskets, pass-partition ribs and the rule of retightening', () => {
  const gasketed = (gasket: Partial<TargetRequest['gasket']>): TargetRequest => ({
    ...EXAMPLE_TARGET,
    gasket: { ...EXAMPLE_TARGET.gasket, ...gasket },
  });
  const target = (gasket: Partial<TargetRequest['gasket']>) => targetWindow(gasketed(gasket)).target;

  it('load each gasket of a stack with the whole load', () => {
    expect(target({ count: 2 })).toEqual(target({}));
  });

  it('share the load with ribs: the same gasket stress needs more bolt load', () => {
    const ring_mm2 = (Math.PI / 4) * (263.7 ** 2 - 233.4 ** 2);
    expect(target({ ribArea_mm2: 1000 }).boltLoad_N / target({}).boltLoad_N).toBeCloseTo(1 + 1000 / ring_mm2, 9);
  });

  it('say what may be done later', () => {
    expect(targetWindow(EXAMPLE_TARGET).retightening).toMatchObject({ afterHot: 'in-site-window' });
    const fibre = gasketed({ family: 'fibre-sheet' });
    expect(targetWindow(fibre).retightening).toMatchObject({ afterHot: 'never-after-hot', relaxationPass: true });
  });
});

describe('the table that crews use', () => {
  const rows = [
    { standard: 'ASME-B16.5', size: 'NPS8', rating: '300', boltStress_MPa: 200 },
    { standard: 'EN-1092-1', size: 'DN65', rating: 'PN16', boltStress_MPa: 200 },
  ];
  const table = (method: 'torque-wrench' | 'tensioner') =>
    crewTable({
      rows,
      area: 'root',
      method,
      lubricant: { nutFactor: 0.16, source: 'test data' },
      passPercents: [30, 70, 100],
    });

  it('has the torques that the target of the same stress has', () => {
    const target = targetWindow({ ...EXAMPLE_TARGET, target: { boltStress_MPa: 200 }, passPercents: [30, 70, 100] });
    const [row] = table('torque-wrench');
    if (row === undefined || 'refused' in row) throw new Error('refused');
    expect(row.passes.map(({ percent, torque_Nm }) => ({ percent, torque_Nm }))).toEqual(target.passes);
    expect(row).toMatchObject({ boltCount: 12, boltThread: '7/8-9 UNC', acrossFlats_mm: 36.51 });
    expect(row.boltLoad_N).toBeCloseTo(target.target.boltLoad_N, 6);
  });

  it('says why a row cannot be printed, and has loads only where no nut is turned', () => {
    const [steel, open] = table('tensioner');
    expect(steel !== undefined && 'passes' in steel && steel.passes[2]?.torque_Nm).toBeUndefined();
    expect(open).toMatchObject({ refused: expect.stringContaining('4 by agreement') });
  });

  it('refuses percents that are none', () => {
    const none = { rows, area: 'root', method: 'tensioner', lubricant: { nutFactor: 0.16, source: 'x' } } as const;
    expect(refused(() => crewTable({ ...none, passPercents: [0, 100] }))).toEqual(['out-of-range passPercents.0']);
  });
});
