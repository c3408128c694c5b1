import type { GasketFamilyCode, Payload, ProcedureContent } from '@seatwell/contract';
import type { Cast } from './people-and-tools.ts';
import type { Recorder } from './recorder.ts';

const DEMO_SOURCE = 'demo data: plausible, not from any maker; enter your own with its source';

export interface Engineering {
  readonly lubricantId: string;
  readonly lubricant: string;
  readonly gasketData: Readonly<Partial<Record<GasketFamilyCode, string>>>;
  /** by code: torque wrench, hydraulic wrench, order numbering, makers' torques */
  readonly procedures: Readonly<Record<'BP-01' | 'BP-02' | 'BP-03' | 'BP-04', string>>;
}

const GASKETS: readonly [GasketFamilyCode, string, number, number, number, number][] = [
  ['spiral-wound', 'Spiral wound 316L / graphite', 55, 30, 85, 230],
  ['fibre-sheet', 'Fibre sheet 2 mm', 17, 10, 35, 90],
  ['graphite-sheet', 'Graphite sheet 2 mm, tanged', 25, 15, 50, 120],
  ['grooved-metal', 'Grooved metal 316L, graphite faced', 45, 30, 90, 350],
];

/** Lubricant, gasket limits and four approved procedures: all of it marked as demo data. */
export async function enterEngineering(story: Recorder, { by }: Cast): Promise<Engineering> {
  const { engineer } = by;
  const lubricantId = story.id();
  const lubricant = 'Nickel paste';
  await story.site(engineer, 'lubricant-entered', lubricantId, {
    lubricantId,
    name: lubricant,
    nutFactor: 0.17,
    temperatureLimit_C: 500,
    source: DEMO_SOURCE,
  });
  const gasketData: Partial<Record<GasketFamilyCode, string>> = {};
  for (const [family, name, seating_MPa, operating_MPa, target_MPa, maximum_MPa] of GASKETS) {
    const gasketDataId = story.id();
    gasketData[family] = gasketDataId;
    await story.site(engineer, 'gasket-data-entered', gasketDataId, {
      gasketDataId,
      name,
      family,
      seating_MPa,
      operating_MPa,
      target_MPa,
      maximum_MPa,
      source: DEMO_SOURCE,
    });
  }
  const base: ProcedureContent = {
    numbering: 'clockwise',
    pattern: 'legacy',
    tools: 1,
    group: null,
    passPercents: [30, 70, 100],
    finalRound: true,
    relaxationPass: false,
    method: 'torque-wrench',
    bolts: { condition: 'new', coating: null, washers: null, material: null },
    lubricantId,
    appliesTo: { kinds: [], ratings: [], gasketFamilies: [], leastBolts: 4, mostBolts: 24 },
    policy: {
      area: 'tensile',
      minimumBoltUtilisation: 0.2,
      maximumBoltUtilisation: 0.65,
      scatter_percent: 20,
      targetBoltStress_MPa: null,
      source: DEMO_SOURCE,
    },
    cautions: [
      'Nobody in the line of fire of bolts and wrenches.',
      'Hands clear of reaction arms; agree who holds and who pulls.',
    ],
  };
  const approve = async (code: string, title: string, change: Partial<ProcedureContent>): Promise<string> => {
    const procedureId = story.id();
    const drafted: Payload<'procedure-drafted'> = {
      procedureId,
      revision: 1,
      code,
      title,
      content: { ...base, ...change },
    };
    await story.site(engineer, 'procedure-drafted', procedureId, drafted);
    await story.site(engineer, 'procedure-approved', procedureId, { revision: 1 });
    return procedureId;
  };
  return {
    lubricantId,
    lubricant,
    gasketData,
    procedures: {
      'BP-01': await approve('BP-01', 'Torque wrench, legacy cross pattern', {}),
      'BP-02': await approve('BP-02', 'Hydraulic wrench, modified cross pattern', {
        pattern: 'modified-legacy',
        method: 'hydraulic-wrench',
        relaxationPass: true,
        appliesTo: { ...base.appliesTo, leastBolts: 8, mostBolts: 64 },
        cautions: [
          ...base.cautions,
          'Hydraulic hoses: no kinks, no hands on a hose under pressure; fluid injection is an emergency.',
        ],
      }),
      'BP-03': await approve('BP-03', 'Torque wrench, numbered in the order of tightening', { numbering: 'order' }),
      'BP-04': await approve('BP-04', "Maker's torque, circular, two passes", {
        pattern: 'circular',
        passPercents: [50, 100],
        appliesTo: { ...base.appliesTo, mostBolts: 64 },
      }),
    },
  };
}
