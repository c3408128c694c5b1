import { NOT_NEGATIVE, requireInRange } from '../checks.ts';
import { findFlange } from '../flanges/find-flange.ts';
import { CalcRefusal, refuse } from '../refusal.ts';
import { type AlignmentRequest, alignmentLimits, type Limit } from './alignment-limits.ts';
import type { Judgement } from './judge-face.ts';

/** Where the outside diameter comes from that limits are a share of. */
export interface FlangeOutside {
  readonly outsideDiameter_mm: number;
  readonly source: string;
}

/**
 * Outside diameter of a flange as the base of limits: entered, else of its standard, else the gasket's outside.
 * The gasket's is smaller than the flange's: a limit from it is on the safe side.
 * @throws CalcRefusal `outside-diameter-missing`; never 0 in its place
 */
export function flangeOutside(input: {
  readonly outsideDiameter_mm?: number;
  readonly flange?: { readonly standard: string; readonly size: string; readonly rating: string };
  readonly gasketOutside_mm?: number;
}): FlangeOutside {
  requireInRange([
    ['outsideDiameter_mm', input.outsideDiameter_mm, { min: 0, open: true }],
    ['gasketOutside_mm', input.gasketOutside_mm, { min: 0, open: true }],
  ]);
  if (input.outsideDiameter_mm !== undefined) {
    return { outsideDiameter_mm: input.outsideDiameter_mm, source: 'entered' };
  }
  const listed = input.flange === undefined ? undefined : listedOutside(input.flange);
  if (listed !== undefined) return listed;
  if (input.gasketOutside_mm !== undefined) {
    return {
      outsideDiameter_mm: input.gasketOutside_mm,
      source: 'geometry: outside of the gasket, less than the flange’s',
    };
  }
  refuse(
    'outsideDiameter_mm',
    'outside-diameter-missing',
    'The limit is a share of the flange’s outside diameter, which neither the joint nor a table gives. Measure and enter it.',
  );
}

function listedOutside(key: {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
}): FlangeOutside | undefined {
  if (key.standard === 'custom') return undefined;
  try {
    // Either bolt count of EN 1092-1 DN 65 has the same outside.
    const { outsideDiameter_mm, source } = findFlange(key.size === 'DN65' ? { ...key, boltCount: 8 } : key);
    return { outsideDiameter_mm, source };
  } catch (error) {
    if (error instanceof CalcRefusal) return undefined;
    throw error;
  }
}

/** What was measured before the bolts went in; what was not measured is left out. */
export interface AlignmentReadings {
  readonly joint: AlignmentRequest['joint'];
  readonly basis?: AlignmentRequest['basis'];
  readonly outsideDiameter_mm?: number;
  readonly flange?: { readonly standard: string; readonly size: string; readonly rating: string };
  readonly gasketOutside_mm?: number;
  readonly gasketThickness_mm?: number;
  readonly offset_mm?: number;
  readonly parallelism_mm?: number;
  readonly rotation_mm?: number;
  readonly pullIn_percent?: number;
  /** Movement of the machine's shaft while its flanges are bolted. */
  readonly shaftMovement_mm?: number;
  /** Gaps around the joint before bolting: the largest is judged, their difference is the parallelism if none is given. */
  readonly gaps_mm?: readonly number[];
}

/**
 * Judges alignment and gap readings. A reading without a limit on this joint is not judged.
 *
 * Source: ASME PCC-1 appendix E (read), ASME B31.3 335.1.1 or API 686 (from memory), by `joint` and `basis`.
 * @throws CalcRefusal `out-of-range`, `outside-diameter-missing` where a limit is a share of the outside diameter
 */
export function judgeAlignmentReadings(input: AlignmentReadings): readonly Judgement[] {
  const { gaps_mm = [] } = input;
  requireInRange(gaps_mm.map((gap, i) => [`gaps_mm.${i}`, gap, NOT_NEGATIVE] as const));
  const needsOutside = input.joint === 'machine-nozzle' || input.basis === 'B31.3';
  const outside = needsOutside ? flangeOutside(input) : undefined;
  const limits = alignmentLimits({
    joint: input.joint,
    ...(input.basis === undefined ? {} : { basis: input.basis }),
    // PCC-1 has no limit that depends on it.
    outsideDiameter_mm: outside?.outsideDiameter_mm ?? 1,
    ...(input.gasketThickness_mm === undefined ? {} : { gasketThickness_mm: input.gasketThickness_mm }),
  });
  const spread = gaps_mm.length > 1 ? Math.max(...gaps_mm) - Math.min(...gaps_mm) : undefined;
  const readings: Readonly<Record<Limit['name'], number | undefined>> = {
    offset: input.offset_mm,
    parallelism: input.parallelism_mm ?? spread,
    rotation: input.rotation_mm,
    'pull-in-force': input.pullIn_percent,
    'shaft-movement': input.shaftMovement_mm,
    gap: gaps_mm.length > 0 ? Math.max(...gaps_mm) : undefined,
  };
  return limits.flatMap(({ name, limit, unit, source }): Judgement[] => {
    const value = readings[name];
    if (value === undefined) return [];
    requireInRange([[name, value, NOT_NEGATIVE]]);
    const base = outside !== undefined && name === 'parallelism' ? `; outside diameter: ${outside.source}` : '';
    return [{ what: name, value, limit, unit, accepted: value <= limit, source: `${source}${base}` }];
  });
}
