import { finite, NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import { areasOf } from '../threads/geometry.ts';
import { type Explainable, type Explained, explained, show, stepsFor, type Warning } from '../working.ts';

/** T = K·d·F: one number for thread, bearing and wedge. There is no default. */
export interface NutFactorModel {
  readonly model: 'nut-factor';
  readonly nutFactor: number;
}

/** Thread and bearing friction apart. There is no default. */
export interface FrictionModel {
  readonly model: 'friction';
  readonly threadFriction: number;
  readonly bearingFriction: number;
  /** Outside of the turning bearing face, mm. */
  readonly bearingOuterDiameter_mm: number;
  /** Inside of the bearing face: hole or washer bore, mm. */
  readonly bearingInnerDiameter_mm: number;
}

export type TorqueModel = NutFactorModel | FrictionModel;
export type TorqueRequest = {
  readonly thread: string;
  readonly load_N: number;
} & TorqueModel &
  Explainable;
export type LoadRequest = {
  readonly thread: string;
  readonly torque_Nm: number;
} & TorqueModel &
  Explainable;
export interface TorqueAnswer extends Explained {
  readonly torque_Nm: number;
  readonly load_N: number;
}

/** cos of half the 60° thread angle. */
const COS_HALF_ANGLE = Math.cos(Math.PI / 6);
const MILLIMETRES_PER_METRE = 1000;

interface Lever {
  /** Torque per load, mm. */
  readonly lever_mm: number;
  readonly formula: string;
  readonly substituted: string;
  readonly source: string;
  readonly warnings: readonly Warning[];
}

function frictionWarnings(model: TorqueModel): Warning[] {
  const values: [string, number, number, number][] =
    model.model === 'nut-factor'
      ? [['nutFactor', model.nutFactor, 0.08, 0.35]]
      : [
          ['threadFriction', model.threadFriction, 0.04, 0.4],
          ['bearingFriction', model.bearingFriction, 0.04, 0.4],
        ];
  return values
    .filter(([, value, low, high]) => value < low || value > high)
    .map(([name, value, low, high]) => ({
      code: 'friction-unusual',
      message: `${name} ${value} lies outside the usual ${low} to ${high} (common practice). Check its source.`,
    }));
}

function leverOf(thread: string, model: TorqueModel, withText: boolean): Lever {
  const { nominalDiameter_mm, pitch_mm, pitchDiameter_mm } = areasOf(thread);
  if (model.model === 'nut-factor') {
    requireInRange([['nutFactor', model.nutFactor, { min: 0.01, max: 1 }]]);
    return {
      lever_mm: model.nutFactor * nominalDiameter_mm,
      formula: 'K·d',
      substituted: withText ? `${show(model.nutFactor)} × ${show(nominalDiameter_mm)}` : '',
      source: 'ASME PCC-1, nut factor form T = K·D·F',
      warnings: frictionWarnings(model),
    };
  }
  const { threadFriction, bearingFriction, bearingOuterDiameter_mm, bearingInnerDiameter_mm } = model;
  requireInRange([
    ['threadFriction', threadFriction, { min: 0, max: 1 }],
    ['bearingFriction', bearingFriction, { min: 0, max: 1 }],
    ['bearingOuterDiameter_mm', bearingOuterDiameter_mm, POSITIVE],
    ['bearingInnerDiameter_mm', bearingInnerDiameter_mm, POSITIVE],
  ]);
  if (bearingOuterDiameter_mm <= bearingInnerDiameter_mm) {
    refuse(
      'bearingOuterDiameter_mm',
      'bearing-face-impossible',
      `The bearing face has outside ${bearingOuterDiameter_mm} mm and inside ${bearingInnerDiameter_mm} mm. The outside must be larger.`,
      bearingInnerDiameter_mm,
    );
  }
  const bearing_mm = (bearingOuterDiameter_mm + bearingInnerDiameter_mm) / 2;
  return {
    lever_mm:
      (pitch_mm / Math.PI + (threadFriction * pitchDiameter_mm) / COS_HALF_ANGLE + bearingFriction * bearing_mm) / 2,
    formula: '½·(P/π + µt·d2/cos 30° + µn·De)',
    substituted: withText
      ? `(${show(pitch_mm)} / π + ${show(threadFriction)} × ${show(pitchDiameter_mm)} / cos(π / 6) + ${show(bearingFriction)} × (${show(bearingOuterDiameter_mm)} + ${show(bearingInnerDiameter_mm)}) / 2) / 2`
      : '',
    source: 'ISO 16047 and VDI 2230; ASME PCC-1 appendix on nut factors',
    warnings: frictionWarnings(model),
  };
}

/**
 * Torque that gives a bolt load.
 *
 * Source: ASME PCC-1 (nut factor), ISO 16047 and VDI 2230 (friction).
 * Formula: T = K·d·F, or T = F/2·(P/π + µt·d2/cos 30° + µn·De) with De the mean bearing diameter.
 * @param input.load_N bolt load, N, more than zero
 * @throws CalcRefusal `unknown-thread`, `out-of-range`, `bearing-face-impossible`
 * @example torqueFromLoad({ thread: '3/4-16 UNF', load_N: 111206, model: 'nut-factor', nutFactor: 0.2 }).torque_Nm // 423.7
 */
export function torqueFromLoad(input: TorqueRequest): TorqueAnswer {
  requireInRange([['load_N', input.load_N, NOT_NEGATIVE]]);
  const steps = stepsFor(input);
  const lever = leverOf(input.thread, input, steps !== undefined);
  const torque_Nm = finite('torque_Nm', (input.load_N * lever.lever_mm) / MILLIMETRES_PER_METRE);
  steps?.push(
    {
      symbol: 'ℓ',
      meaning: 'torque per bolt load',
      formula: lever.formula,
      substituted: lever.substituted,
      value: lever.lever_mm,
      unit: 'mm',
      source: lever.source,
    },
    {
      symbol: 'T',
      meaning: 'torque',
      formula: 'F·ℓ',
      substituted: `${show(input.load_N)} × ${show(lever.lever_mm)} / ${MILLIMETRES_PER_METRE}`,
      value: torque_Nm,
      unit: 'N·m',
      source: lever.source,
    },
  );
  return explained({ torque_Nm, load_N: input.load_N }, lever.warnings, steps);
}

/**
 * Bolt load that a torque gives: the inverse of torqueFromLoad.
 *
 * @param input.torque_Nm torque at the nut, N·m
 * @throws CalcRefusal `unknown-thread`, `out-of-range`, `bearing-face-impossible`
 */
export function loadFromTorque(input: LoadRequest): TorqueAnswer {
  requireInRange([['torque_Nm', input.torque_Nm, NOT_NEGATIVE]]);
  const steps = stepsFor(input);
  const lever = leverOf(input.thread, input, steps !== undefined);
  const load_N = finite('load_N', (input.torque_Nm * MILLIMETRES_PER_METRE) / lever.lever_mm);
  steps?.push(
    {
      symbol: 'ℓ',
      meaning: 'torque per bolt load',
      formula: lever.formula,
      substituted: lever.substituted,
      value: lever.lever_mm,
      unit: 'mm',
      source: lever.source,
    },
    {
      symbol: 'F',
      meaning: 'bolt load',
      formula: 'T/ℓ',
      substituted: `${show(input.torque_Nm)} × ${MILLIMETRES_PER_METRE} / ${show(lever.lever_mm)}`,
      value: load_N,
      unit: 'N',
      source: lever.source,
    },
  );
  return explained({ torque_Nm: input.torque_Nm, load_N }, lever.warnings, steps);
}
