import { z } from 'zod';
import { gasketFamily, line } from './primitives.ts';

/** Sizes beyond which a request is refused before anything is computed. */
export const SIMULATION_SIZES = {
  bolts: 200,
  passes: 40,
  stepsOfAPass: 400,
  curvePoints: 40,
  compared: 12,
  /** Steps of all sequences of a request together, so that an answer takes about a second at most. */
  steps: 3000,
  /** Of a long run, which is a job: sequences, scattered runs of each, and steps of all runs together. */
  comparedInJob: 200,
  scatterRuns: 1000,
  stepsInJob: 2_000_000,
} as const;

const millimetres = z.number().positive().max(20_000);
const bolts = z.array(z.int().min(1).max(SIMULATION_SIZES.bolts)).min(1).max(SIMULATION_SIZES.bolts);
const loadPercent = z.number().positive().max(300);

const simulatedGasket = z.strictObject({
  family: gasketFamily,
  contactInside_mm: millimetres.optional(),
  contactOutside_mm: millimetres.optional(),
  /** Measured virgin curve: compression mm and stress MPa, both rising from 0. */
  curve: z
    .array(z.tuple([z.number().positive().max(100), z.number().positive().max(5000)]))
    .min(1)
    .max(SIMULATION_SIZES.curvePoints)
    .optional(),
  thickness_mm: z.number().positive().max(100).optional(),
  E0_MPa: z.number().nonnegative().max(1e6).optional(),
  K1: z.number().nonnegative().max(1e4).optional(),
});

const simulatedJoint = z.union([
  z.strictObject({
    standard: line,
    size: line,
    rating: line,
    /** Where the standard leaves it open. */
    boltCount: z.int().min(4).max(SIMULATION_SIZES.bolts).optional(),
    kind: z.enum(['weld-neck-pair', 'weld-neck-to-blind']),
    gasket: simulatedGasket,
  }),
  z.strictObject({
    /** Per flange; both flanges are taken as alike. */
    equivalentRing: z.strictObject({
      R_mm: millimetres,
      EI_Nmm2: z.number().positive().max(1e18),
      GJ_Nmm2: z.number().positive().max(1e18),
      cBolt_mm_per_N: z.number().min(-1e-3).max(1e-1),
      cGasket_mm3_per_N: z.number().nonnegative().max(1),
    }),
    boltCount: z.int().min(4).max(SIMULATION_SIZES.bolts),
    thread: line,
    boltCircle_mm: millimetres,
    /** Elastic length: grip plus one diameter. */
    boltLength_mm: millimetres,
    gasket: simulatedGasket,
  }),
]);

/** Bolts of a step are tightened together; numbers are clockwise from bolt 1 at the datum. */
const step = z.union([
  bolts,
  z.strictObject({ bolts, load_percent: z.union([loadPercent, z.array(loadPercent).max(SIMULATION_SIZES.bolts)]) }),
]);

const passes = z
  .array(
    z.strictObject({
      percent: loadPercent.optional(),
      steps: z.array(step).min(1).max(SIMULATION_SIZES.stepsOfAPass),
    }),
  )
  .min(1)
  .max(SIMULATION_SIZES.passes);

const options = z.strictObject({
  /** Set of the gasket between passes, mm per MPa. */
  creep: z.number().nonnegative().max(1).optional(),
  guideRingClosure_mm: z.number().positive().max(20).optional(),
  /** Difference of the gap across the flange before tightening, widest at bolt 1. */
  initialTilt_mm: z.number().nonnegative().max(20).optional(),
  scatter_percent: z.number().nonnegative().max(60).optional(),
  seed: z.int().min(0).max(4_294_967_295).optional(),
});

const simulatedCase = z.strictObject({ passes, options: options.optional() });

const stepCount = (sequence: z.infer<typeof passes> | undefined) =>
  (sequence ?? []).reduce((sum, pass) => sum + pass.steps.length, 0);

/** `POST /api/v1/calc/simulation` */
export const simulationRequest = z
  .strictObject({
    joint: simulatedJoint,
    target_MPa: z.number().positive().max(2000),
    area: z.enum(['tensile', 'root']),
    passes: passes.optional(),
    options: options.optional(),
    compare: z.array(simulatedCase).min(1).max(SIMULATION_SIZES.compared).optional(),
    working: z.boolean().optional(),
  })
  .refine((request) => request.passes !== undefined || request.compare !== undefined, {
    path: ['passes'],
    message: 'Give passes, or several sequences under compare.',
  })
  .refine(
    (request) =>
      stepCount(request.passes) + (request.compare ?? []).reduce((sum, item) => sum + stepCount(item.passes), 0) <=
      SIMULATION_SIZES.steps,
    {
      path: ['passes'],
      message: `The request has more than ${SIMULATION_SIZES.steps} steps in all. Send fewer sequences at once.`,
    },
  );
/** `POST /api/v1/calc/simulation/runs`: many sequences or many scattered runs, as a job. */
export const longSimulationRequest = z
  .strictObject({
    joint: simulatedJoint,
    target_MPa: z.number().positive().max(2000),
    area: z.enum(['tensile', 'root']),
    compare: z.array(simulatedCase).min(1).max(SIMULATION_SIZES.comparedInJob),
    scatterRuns: z.int().min(1).max(SIMULATION_SIZES.scatterRuns).default(200),
  })
  .refine(({ compare }) => compare.every((item) => stepCount(item.passes) <= SIMULATION_SIZES.steps), {
    path: ['compare'],
    message: `A sequence has more than ${SIMULATION_SIZES.steps} steps.`,
  })
  .refine(
    ({ compare, scatterRuns }) =>
      compare.reduce(
        (sum, { passes: sequence, options: asked }) =>
          sum + stepCount(sequence) * (4 + ((asked?.scatter_percent ?? 0) > 0 ? scatterRuns : 0)),
        0,
      ) <= SIMULATION_SIZES.stepsInJob,
    {
      path: ['compare'],
      message: `All runs together have more than ${SIMULATION_SIZES.stepsInJob} steps. Send fewer sequences or fewer scattered runs.`,
    },
  );
export type LongSimulationRequestBody = z.infer<typeof longSimulationRequest>;
export type SimulationRequestBody = z.infer<typeof simulationRequest>;

const statistics = z.object({ min: z.number(), mean: z.number(), max: z.number(), sd: z.number() });
const ofBand = z.object({ min: z.number(), mean: z.number() });

const caseAnswer = z.object({
  /** Loads in clockwise order, percent of target; gap of the faces at the edge beside each bolt. */
  steps: z
    .array(z.object({ loads_percent: z.array(z.number()).readonly(), gap_mm: z.array(z.number()).readonly() }))
    .readonly(),
  final: statistics,
  gasketPeak_MPa: z.number(),
  parallelism_mm: z.number(),
  moves: z.int(),
  band: z.object({ low: ofBand, high: ofBand }),
});

/** The fields of the case stand at the top when `passes` was given; others under `compare`, in order. */
export const simulationAnswer = caseAnswer.partial().extend({
  compare: z.array(caseAnswer).readonly().optional(),
  /** Limits of the simulation, to be printed beside the result. */
  limits: z.array(z.string()).readonly(),
  warnings: z.array(z.object({ code: z.string(), message: z.string() })).readonly(),
  working: z
    .array(
      z.object({
        symbol: z.string(),
        meaning: z.string(),
        formula: z.string(),
        substituted: z.string(),
        value: z.number(),
        unit: z.string(),
        source: z.string(),
      }),
    )
    .readonly()
    .optional(),
});
export type SimulationAnswerBody = z.infer<typeof simulationAnswer>;
