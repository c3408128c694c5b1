import { POSITIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';

export interface Limit {
  readonly name: 'offset' | 'parallelism' | 'rotation' | 'gap' | 'pull-in-force' | 'shaft-movement';
  readonly limit: number;
  readonly unit: 'mm' | '% of target load';
  readonly meaning: string;
  readonly source: string;
}

export interface AlignmentRequest {
  /** Machine nozzles have tighter limits of their own. */
  readonly joint: 'piping' | 'machine-nozzle';
  readonly outsideDiameter_mm: number;
  readonly gasketThickness_mm?: number;
  /** `PCC-1`: the joint-integrity limits; `B31.3`: the construction code. */
  readonly basis?: 'PCC-1' | 'B31.3';
}

const PCC1 = 'ASME PCC-1 appendix E (read)';
const B313 = 'ASME B31.3 335.1.1 (from memory)';
const API686 = 'API 686 chapter 6 (from memory)';

/** Movement of the machine's shaft while its flanges are bolted, mm. API 686 (from memory). */
export const SHAFT_MOVEMENT_LIMIT_MM = 0.05;

function pipingLimits(input: AlignmentRequest): readonly Limit[] {
  if (input.basis === 'B31.3') {
    return [
      { name: 'offset', limit: 3, unit: 'mm', meaning: 'bolt-hole offset', source: B313 },
      {
        name: 'parallelism',
        limit: input.outsideDiameter_mm / 200,
        unit: 'mm',
        meaning: 'difference of the gap across the flange, 1 mm in 200 mm',
        source: B313,
      },
    ];
  }
  const limits: Limit[] = [
    { name: 'offset', limit: 1.5, unit: 'mm', meaning: 'centre-line offset', source: PCC1 },
    {
      name: 'parallelism',
      limit: 0.8,
      unit: 'mm',
      meaning: 'difference of the gap at the sealing surface',
      source: PCC1,
    },
    { name: 'rotation', limit: 3, unit: 'mm', meaning: 'bolt-hole offset by rotation', source: PCC1 },
    {
      name: 'pull-in-force',
      limit: 10,
      unit: '% of target load',
      meaning: 'force to bring the flanges together',
      source: PCC1,
    },
  ];
  if (input.gasketThickness_mm !== undefined) {
    limits.push({
      name: 'gap',
      limit: 2 * input.gasketThickness_mm,
      unit: 'mm',
      meaning: 'gap before bolting, at most twice the gasket',
      source: PCC1,
    });
  }
  return limits;
}

/**
 * Limits of alignment before bolting.
 *
 * Source: ASME PCC-1 appendix E (read); ASME B31.3 335.1.1 and API 686 (from memory).
 * @param input.outsideDiameter_mm of the flange
 * @throws CalcRefusal `out-of-range`
 */
export function alignmentLimits(input: AlignmentRequest): readonly Limit[] {
  requireInRange([
    ['outsideDiameter_mm', input.outsideDiameter_mm, POSITIVE],
    ['gasketThickness_mm', input.gasketThickness_mm, POSITIVE],
  ]);
  if (input.joint === 'piping') return pipingLimits(input);
  return [
    { name: 'offset', limit: 1.5, unit: 'mm', meaning: 'bolt-hole offset', source: API686 },
    { name: 'rotation', limit: 1.5, unit: 'mm', meaning: 'bolt-hole offset by rotation', source: API686 },
    {
      name: 'shaft-movement',
      limit: SHAFT_MOVEMENT_LIMIT_MM,
      unit: 'mm',
      meaning: 'movement of the shaft while the flanges are bolted',
      source: API686,
    },
    {
      name: 'parallelism',
      // 0.01 mm per cm of outside diameter.
      limit: input.outsideDiameter_mm / 1000,
      unit: 'mm',
      meaning: 'difference of the gap, 0.01 mm per cm of outside diameter',
      source: API686,
    },
  ];
}

/**
 * Judges a reading against its limit.
 * @throws CalcRefusal `no-limit-for-reading`
 */
export function judgeAlignment(
  limits: readonly Limit[],
  reading: { readonly name: Limit['name']; readonly value: number },
): { readonly accepted: boolean; readonly limit: Limit } {
  requireInRange([['reading.value', reading.value, { min: 0 }]]);
  const limit = limits.find(({ name }) => name === reading.name);
  if (limit === undefined) {
    refuse(
      'reading.name',
      'no-limit-for-reading',
      `There is no limit for ${reading.name} on this joint; limits exist for ${limits.map(({ name }) => name).join(', ')}.`,
    );
  }
  return { accepted: reading.value <= limit.limit, limit };
}
