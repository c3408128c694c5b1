import type { QuantityName } from '@seatwell/contract';
import { textOf } from '../../app/search-params.ts';

/**
 * Everything that can be entered, as the address holds it: texts, numbers in the API's unit. What the address
 * does not name is not entered; there is no hidden value.
 */
export const INPUT_NAMES = [
  'standard',
  'size',
  'rating',
  'boltCount',
  'thread',
  'hole_mm',
  'flangeMaximum_MPa',
  'flangeMaximumSource',
  'strengthKind',
  'outside_mm',
  'inside_mm',
  'boltCircle_mm',
  'thickness_mm',
  'hubLength_mm',
  'hubSmall_mm',
  'hubLarge_mm',
  'allowableAmbient_MPa',
  'allowableOperating_MPa',
  'modulusAmbient_MPa',
  'modulusOperating_MPa',
  'strengthSource',
  'rotationLimit_deg',
  'rotationAtMaximum_deg',
  'rotationSource',
  'family',
  'gasketCount',
  'ribArea_mm2',
  'ringPitch_mm',
  'ringWidth_mm',
  'ringSource',
  'contactInside_mm',
  'contactOutside_mm',
  'seating_MPa',
  'operating_MPa',
  'target_MPa',
  'maximum_MPa',
  'gasketSource',
  'grade',
  'condition',
  'yield_MPa',
  'yieldSource',
  'nut',
  'coating',
  'coatingMaximum_C',
  'coatingSource',
  'washersPerBolt',
  'washerInside_mm',
  'washerOutside_mm',
  'washerThickness_mm',
  'pressure_MPa',
  'temperature_C',
  'testPressure_MPa',
  'axialForce_N',
  'moment_Nm',
  'assembly_C',
  'startBolt_C',
  'startFlange_C',
  'coolBolt_C',
  'coolFlange_C',
  'boltExpansion_ppmK',
  'flangeExpansion_ppmK',
  'expansionSource',
  'flangeStiffness_kNmm',
  'gasketStiffness_kNmm',
  'stiffnessSource',
  'friction',
  'nutFactor',
  'threadFriction',
  'bearingFriction',
  'lubricantSource',
  'method',
  'pairs',
  'gaugeDivision_MPa',
  'hydraulicArea_mm2',
  'grip_mm',
  'elasticModulus_MPa',
  'area',
  'leastShare_percent',
  'mostShare_percent',
  'scatter_percent',
  'boltStress_MPa',
  'passes',
  'pattern',
  'numbering',
  'tools',
  'group',
  'side',
] as const;

/** The quantity of each input that has one; the others are words, counts and factors. */
export const INPUT_QUANTITIES = {
  hole_mm: 'length',
  flangeMaximum_MPa: 'stress',
  outside_mm: 'length',
  inside_mm: 'length',
  boltCircle_mm: 'length',
  thickness_mm: 'length',
  hubLength_mm: 'length',
  hubSmall_mm: 'length',
  hubLarge_mm: 'length',
  allowableAmbient_MPa: 'stress',
  allowableOperating_MPa: 'stress',
  modulusAmbient_MPa: 'stress',
  modulusOperating_MPa: 'stress',
  ringPitch_mm: 'length',
  ringWidth_mm: 'length',
  coatingMaximum_C: 'temperature',
  washerInside_mm: 'length',
  washerOutside_mm: 'length',
  washerThickness_mm: 'length',
  assembly_C: 'temperature',
  startBolt_C: 'temperature',
  startFlange_C: 'temperature',
  coolBolt_C: 'temperature',
  coolFlange_C: 'temperature',
  contactInside_mm: 'length',
  contactOutside_mm: 'length',
  seating_MPa: 'stress',
  operating_MPa: 'stress',
  target_MPa: 'stress',
  maximum_MPa: 'stress',
  yield_MPa: 'stress',
  pressure_MPa: 'pressure',
  temperature_C: 'temperature',
  testPressure_MPa: 'pressure',
  axialForce_N: 'load',
  moment_Nm: 'torque',
  gaugeDivision_MPa: 'pressure',
  grip_mm: 'length',
  elasticModulus_MPa: 'stress',
  boltStress_MPa: 'stress',
} as const satisfies Partial<Record<(typeof INPUT_NAMES)[number], QuantityName>>;

export type InputName = (typeof INPUT_NAMES)[number];
export type Inputs = Readonly<Partial<Record<InputName, string>>>;

/** Reads the inputs out of an address; names that are not inputs are left out. */
export function readInputs(search: Readonly<Record<string, unknown>>): Inputs {
  const read: Partial<Record<InputName, string>> = {};
  for (const name of INPUT_NAMES) {
    const value = textOf(search[name]);
    if (value !== undefined) read[name] = value;
  }
  return read;
}

/** Inputs by name, as texts. */
export type EnteredTexts = Readonly<Partial<Record<string, string>>>;

/** The same inputs with some set anew; an empty text takes an input away. */
export function withInputs<Entered extends EnteredTexts>(inputs: Entered, change: Entered): Entered {
  const next: Record<string, string> = {};
  for (const [name, value] of Object.entries({ ...inputs, ...change })) {
    if (value !== undefined && value !== '') next[name] = value;
  }
  return next as Entered;
}

/** The number of an input; undefined where none is entered or it is none. */
export function numberIn(inputs: Inputs, name: InputName): number | undefined {
  const typed = inputs[name];
  if (typed === undefined) return undefined;
  const value = Number(typed);
  return Number.isFinite(value) ? value : undefined;
}

/** A number as the address holds it: twelve digits, so that a value survives the way through another unit. */
export function asInput(value: number | undefined): string {
  return value === undefined ? '' : String(Number(value.toPrecision(12)));
}

export interface ChartPair {
  readonly pressure_MPa: number;
  readonly torque_Nm: number;
}

/** The chart of a hydraulic wrench, `10:400 20:810` in MPa and N·m. */
export function readChart(written: string | undefined): readonly ChartPair[] {
  return (written ?? '').split(' ').flatMap((pair) => {
    const [pressure = '', torque = ''] = pair.split(':');
    const read = { pressure_MPa: Number(pressure), torque_Nm: Number(torque) };
    return pressure !== '' && torque !== '' && Number.isFinite(read.pressure_MPa) && Number.isFinite(read.torque_Nm)
      ? [read]
      : [];
  });
}

export function writeChart(pairs: readonly ChartPair[]): string {
  return pairs.map((pair) => `${asInput(pair.pressure_MPa)}:${asInput(pair.torque_Nm)}`).join(' ');
}

/** Percents of the passes, `30 70 100`. */
export function readPasses(written: string | undefined): readonly number[] {
  return (written ?? '')
    .split(/[\s,;]+/)
    .filter((part) => part !== '')
    .map(Number);
}
