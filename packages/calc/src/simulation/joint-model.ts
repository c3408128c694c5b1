import { requireInRange } from '../checks.ts';
import { type GasketCurve, type GasketLaw, gasketLaw } from './gasket-law.ts';
import { type RingSection, ringElementStiffness } from './ring-element.ts';
import { MOST_STATIONS } from './station-index.ts';

/** Everything that the simulation needs to know about a joint, in numbers. */
export interface SimulationJoint {
  /** Ring of the pair in series (for identical flanges: EI/2 and GJ/2 of one). */
  readonly ring: RingSection;
  readonly boltCount: number;
  readonly boltCircle_mm: number;
  /** Elastic length between mid-nut and mid-nut: grip plus one bolt diameter, mm. */
  readonly boltLength_mm: number;
  /** Tensile stress area of one bolt, mm². */
  readonly boltArea_mm2: number;
  readonly boltModulus_MPa?: number;
  /** Local compliance under the nuts of both flanges together, mm/N; may be slightly negative. */
  readonly boltCompliance_mm_per_N: number;
  /** Local indentation of both faces together, mm per MPa of gasket stress. */
  readonly faceCompliance_mm3_per_N: number;
  readonly gasket: {
    readonly contactInside_mm: number;
    readonly contactOutside_mm: number;
    readonly curve: GasketCurve;
  };
  /** Diameter at which gaps and parallelism are read; the bolt circle where not given. */
  readonly flangeOutside_mm?: number;
  /** Solid ring that stops the faces. */
  readonly guideRing?: {
    readonly closure_mm: number;
    readonly diameter_mm: number;
    /** Stiffness of the stop, MPa per mm over its width. */
    readonly stiffness_N_per_mm2: number;
  };
  /** Nuts stand clear until they are first tightened, instead of hand tight: no hold against tilting. */
  readonly nutsClear?: boolean;
  /** Difference of the gap across the flange edge before tightening, widest at an angle from bolt 1. */
  readonly initialTilt?: { readonly difference_mm: number; readonly widestAt_deg: number };
}

/** Choices of the discretisation. */
export interface SolverChoices {
  /** Stations from one bolt to the next; default max(2, ⌈96 / bolts⌉), kept so that stations face each other. */
  readonly stationsPerBolt?: number;
  /** Scales the virgin compression of the gasket, for bands. */
  readonly compressionFactor?: number;
}

/** The joint as the solver sees it. */
export interface JointModel {
  readonly joint: SimulationJoint;
  readonly stations: number;
  readonly stationsPerBolt: number;
  readonly element: Float64Array;
  readonly law: GasketLaw;
  readonly boltStiffness: number;
  /** Lever arms (r − R)/R of the bolts, the two gasket points, the stop and the flange edge. */
  readonly boltLever: number;
  readonly innerLever: number;
  readonly outerLever: number;
  readonly stopLever: number;
  readonly edgeLever: number;
  /** Gasket area of one station at the two radial points, mm². */
  readonly innerArea: number;
  readonly outerArea: number;
  /** Stiffness of the stop at one station, N/mm; 0 without a stop. */
  readonly stopStiffness: number;
  readonly stopClosure: number;
  /** Gap before contact at each station: inner, outer, stop, edge. */
  readonly gaps: Float64Array;
  readonly gasketArea_mm2: number;
}

const DEFAULT_BOLT_MODULUS_MPA = 200_000;

/** Stations between bolts: enough to resolve the gasket, and an even number in all. */
export function defaultStationsPerBolt(boltCount: number): number {
  const stations = Math.max(2, Math.ceil(96 / boltCount));
  return (stations * boltCount) % 2 === 0 ? stations : stations + 1;
}

/** Stiffness of one bolt with the local compliance of both flanges, N/mm. */
export function boltStiffness(joint: SimulationJoint): number {
  const modulus = joint.boltModulus_MPa ?? DEFAULT_BOLT_MODULUS_MPA;
  return 1 / (joint.boltLength_mm / (modulus * joint.boltArea_mm2) + joint.boltCompliance_mm_per_N);
}

/**
 * Builds the solver's view of a joint that `checkJoint` has accepted.
 * @throws CalcRefusal `out-of-range` when there are more stations than the solver numbers
 */
export function jointModel(joint: SimulationJoint, choices: SolverChoices = {}): JointModel {
  const stationsPerBolt = choices.stationsPerBolt ?? defaultStationsPerBolt(joint.boltCount);
  const stations = stationsPerBolt * joint.boltCount;
  requireInRange([['choices.stationsPerBolt', stationsPerBolt, { max: Math.floor(MOST_STATIONS / joint.boltCount) }]]);
  const arc = (2 * Math.PI) / stations;
  const ringRadius = joint.ring.radius_mm;
  const inside = joint.gasket.contactInside_mm / 2;
  const outside = joint.gasket.contactOutside_mm / 2;
  const width = outside - inside;
  const middle = (inside + outside) / 2;
  const innerRadius = middle - width / (2 * Math.sqrt(3));
  const outerRadius = middle + width / (2 * Math.sqrt(3));
  const edgeRadius = (joint.flangeOutside_mm ?? joint.boltCircle_mm) / 2;
  const stopRadius = (joint.guideRing?.diameter_mm ?? 0) / 2;
  const lever = (radius: number) => (radius - ringRadius) / ringRadius;
  const gaps = new Float64Array(4 * stations);
  if (joint.initialTilt !== undefined) {
    const { difference_mm, widestAt_deg } = joint.initialTilt;
    const widest = (widestAt_deg * Math.PI) / 180;
    for (let station = 0; station < stations; station++) {
      const along = Math.cos(station * arc - widest) / edgeRadius;
      [innerRadius, outerRadius, stopRadius, edgeRadius].forEach((radius, which) => {
        gaps[4 * station + which] = (difference_mm / 2) * (1 + radius * along);
      });
    }
  }
  return {
    joint,
    stations,
    stationsPerBolt,
    element: ringElementStiffness(joint.ring, arc),
    law: gasketLaw(joint.gasket.curve, joint.faceCompliance_mm3_per_N, choices.compressionFactor ?? 1),
    boltStiffness: boltStiffness(joint),
    boltLever: lever(joint.boltCircle_mm / 2),
    innerLever: lever(innerRadius),
    outerLever: lever(outerRadius),
    stopLever: lever(stopRadius),
    edgeLever: lever(edgeRadius),
    innerArea: (width / 2) * innerRadius * arc,
    outerArea: (width / 2) * outerRadius * arc,
    stopStiffness: (joint.guideRing?.stiffness_N_per_mm2 ?? 0) * stopRadius * arc,
    stopClosure: joint.guideRing?.closure_mm ?? 0,
    gaps,
    gasketArea_mm2: Math.PI * (outside * outside - inside * inside),
  };
}
