import { z } from 'zod';
import { tighteningMethod } from '../primitives.ts';
import { calcArea, calcExplainable, calcExplained, calcWarning, list } from './common.ts';

const strength = z
  .strictObject({
    kind: z.enum(['integral', 'loose']),
    outsideDiameter_mm: z.number().exactOptional(),
    insideDiameter_mm: z.number().exactOptional(),
    boltCircle_mm: z.number().exactOptional(),
    thickness_mm: z.number().exactOptional(),
    hub: z
      .strictObject({ length_mm: z.number(), smallThickness_mm: z.number(), largeThickness_mm: z.number() })
      .exactOptional(),
    allowableAmbient_MPa: z.number(),
    allowableOperating_MPa: z.number(),
    elasticModulusAmbient_MPa: z.number(),
    elasticModulusOperating_MPa: z.number(),
    source: z.string(),
  })
  .describe(
    'for the flange stresses of the code: governing for a custom flange, advisory for a rated one; dimensions of a standard flange come from its tables',
  );

const flangeLimits = {
  maximumBoltStress_MPa: z.number().exactOptional(),
  maximumBoltStressSource: z.string().exactOptional(),
  strength: strength.exactOptional(),
  rotation: z
    .strictObject({
      gasketLimit_deg: z.number(),
      flangeAtMaximum_deg: z
        .number()
        .exactOptional()
        .describe('rotation of one flange at maximumBoltStress_MPa; otherwise from the rigidity of strength'),
      source: z.string(),
    })
    .exactOptional()
    .describe('no rotation limit is published: the gasket’s, as entered'),
};

const flange = z.union([
  z.strictObject({
    standard: z.string(),
    size: z.string(),
    rating: z.string(),
    boltCount: z.number().exactOptional(),
    ...flangeLimits,
  }),
  z.strictObject({
    custom: z.strictObject({
      boltCount: z.number(),
      boltThread: z.string(),
      boltCircle_mm: z.number().exactOptional(),
      boltHole_mm: z.number().exactOptional(),
      thickness_mm: z.number().exactOptional(),
    }),
    ...flangeLimits,
  }),
]);

const gasket = z.strictObject({
  family: z.string(),
  contactOutside_mm: z.number(),
  contactInside_mm: z.number(),
  count: z.number().exactOptional(),
  ribArea_mm2: z.number().exactOptional(),
  limits: z
    .strictObject({
      seating_MPa: z.number(),
      operating_MPa: z.number(),
      target_MPa: z.number(),
      maximum_MPa: z.number(),
      source: z.string(),
    })
    .exactOptional()
    .describe('the maker’s or the site’s tested data; without them the target is refused'),
  codeFactors: z.strictObject({ m: z.number(), y_MPa: z.number(), source: z.string() }).exactOptional(),
});

const bolting = z.strictObject({
  thread: z.string().exactOptional(),
  count: z.number().exactOptional(),
  grade: z.string(),
  condition: z.enum(['new', 'reused', 'coated']),
  yield_MPa: z.number().exactOptional(),
  yieldSource: z.string().exactOptional(),
  elasticModulus_MPa: z.number().exactOptional(),
  nut: z.string().exactOptional().describe('2H, A194 2HM: refused where the grade does not go with it'),
  coating: z.string().exactOptional().describe('zinc, cadmium, ptfe, aluminium-ceramic, or another with its limit'),
  coatingMaximum_C: z.number().exactOptional(),
  coatingSource: z.string().exactOptional(),
  washers: z
    .strictObject({
      perBolt: z.union([z.literal(1), z.literal(2)]),
      outsideDiameter_mm: z.number().exactOptional(),
      insideDiameter_mm: z.number().exactOptional(),
      thickness_mm: z.number().exactOptional(),
    })
    .exactOptional()
    .describe('what is not given comes from a table held from memory'),
});

const thermal = z
  .strictObject({
    assemblyTemperature_C: z.number(),
    states: list(z.strictObject({ name: z.string(), boltTemperature_C: z.number(), flangeTemperature_C: z.number() })),
    boltExpansion_perK: z.number(),
    flangeExpansion_perK: z.number(),
    source: z.string(),
    stiffness: z
      .strictObject({ flanges_N_per_mm: z.number(), gaskets_N_per_mm: z.number(), source: z.string() })
      .exactOptional()
      .describe('of the clamped parts; without it they are taken as rigid, which is conservative'),
  })
  .describe('bolts and flanges at different temperatures; needs clampedParts and bolting.elasticModulus_MPa');

const lubricant = z.union([
  z.strictObject({ nutFactor: z.number(), source: z.string() }),
  z.strictObject({ threadFriction: z.number(), bearingFriction: z.number(), source: z.string() }),
]);

const tool = z.strictObject({
  wrench: z
    .strictObject({
      pairs: list(z.strictObject({ pressure_MPa: z.number(), torque_Nm: z.number() })),
      gaugeDivision_MPa: z.number(),
    })
    .exactOptional(),
  hydraulicArea_mm2: z.number().exactOptional(),
});

export const calcTargetRequest = z.strictObject({
  flange,
  clampedParts: list(z.strictObject({ kind: z.string(), thickness_mm: z.number() })).exactOptional(),
  gasket,
  bolting,
  service: z.strictObject({
    pressure_MPa: z.number(),
    temperature_C: z.number(),
    testPressure_MPa: z.number().exactOptional(),
    axialForce_N: z.number().exactOptional(),
    moment_Nm: z.number().exactOptional(),
    thermal: thermal.exactOptional(),
  }),
  lubricant,
  method: tighteningMethod,
  area: calcArea,
  policy: z.strictObject({
    minimumBoltUtilisation: z.number(),
    maximumBoltUtilisation: z.number(),
    scatter_percent: z.number().exactOptional(),
    remainingShare: z.number().exactOptional(),
  }),
  target: z.strictObject({ boltStress_MPa: z.number() }).exactOptional(),
  tool: tool.exactOptional(),
  passPercents: list(z.number()).exactOptional(),
  ...calcExplainable,
});

const limit = z.object({
  name: z.string(),
  boltStress_MPa: z.number(),
  area: calcArea,
  gasketWidth: z.enum(['full', 'effective']).exactOptional(),
  advisory: z.literal(true).exactOptional(),
  scatterIncluded: z.literal(true).exactOptional(),
  source: z.string(),
});

export const calcTargetResponse = z.object({
  window: z.object({
    open: z.boolean(),
    lower: list(limit),
    upper: list(limit),
    shortfall_MPa: z.number().exactOptional(),
    remedies: list(calcWarning).exactOptional(),
  }),
  target: z.object({
    boltStress_MPa: z.number(),
    area: calcArea,
    boltLoad_N: z.number(),
    gasketStress_MPa: z.number(),
    governedBy: z.string(),
  }),
  spread: z.object({ low_MPa: z.number(), high_MPa: z.number(), insideWindow: z.boolean() }),
  tool: z.object({
    torque_Nm: z.number().exactOptional(),
    pressure_MPa: z.number().exactOptional(),
    resultingTorque_Nm: z.number().exactOptional(),
    toolLoad_N: z.number().exactOptional(),
    elongation_mm: z.number().exactOptional(),
    effectiveLength_mm: z.number().exactOptional().describe('mid-nut to mid-nut, over which the elongation is'),
    acrossFlats_mm: z.number().exactOptional(),
  }),
  passes: list(
    z.object({
      percent: z.number(),
      torque_Nm: z.number().exactOptional(),
      pressure_MPa: z.number().exactOptional(),
      elongation_mm: z.number().exactOptional(),
    }),
  ),
  flangeStress: list(
    z.object({
      case: z.enum(['assembly', 'operating', 'test']),
      longitudinalHub_MPa: z.number(),
      radial_MPa: z.number(),
      tangential_MPa: z.number(),
      rigidityJ: z.number(),
      rotation_deg: z.number(),
      ok: z.boolean(),
    }),
  ).exactOptional(),
  retightening: z.object({
    relaxationPass: z.boolean(),
    afterHot: z.enum(['never-after-hot', 'cold-only', 'in-site-window', 'maker-only', 'not-needed']),
    sentence: z.string(),
    source: z.string(),
  }),
  ...calcExplained,
});
export type CalcTargetRequest = z.infer<typeof calcTargetRequest>;
export type CalcTargetResponse = z.infer<typeof calcTargetResponse>;
