import { POSITIVE, requireInRange } from '../checks.ts';
import { refuse } from '../refusal.ts';
import { type Explainable, type Explained, explained, show, stepsFor, type WorkingStep } from '../working.ts';

/** A pair of the tool's chart. */
export interface PressureTorquePair {
  readonly pressure_MPa: number;
  readonly torque_Nm: number;
}

/** A hydraulic wrench as its chart and gauge describe it. */
export interface HydraulicWrench {
  /** At least two pairs, rising. */
  readonly pairs: readonly PressureTorquePair[];
  /** Division of the gauge that the crew reads. */
  readonly gaugeDivision_MPa: number;
}

function checkPairs(pairs: readonly PressureTorquePair[]): void {
  pairs.forEach((pair, i) => {
    requireInRange([
      [`pairs.${i}.pressure_MPa`, pair.pressure_MPa, POSITIVE],
      [`pairs.${i}.torque_Nm`, pair.torque_Nm, POSITIVE],
    ]);
  });
  const rising = pairs.every((pair, i) => {
    const before = pairs[i - 1];
    return before === undefined || (pair.pressure_MPa > before.pressure_MPa && pair.torque_Nm > before.torque_Nm);
  });
  if (pairs.length < 2 || !rising) {
    refuse(
      'pairs',
      'tool-chart-unusable',
      'The tool chart needs at least two pairs with rising pressure and torque. Copy them from the tool’s certificate.',
    );
  }
}

function around(pairs: readonly PressureTorquePair[], at: (pair: PressureTorquePair) => number, value: number) {
  const upper = pairs.findIndex((pair) => at(pair) >= value);
  return { high: pairs[Math.max(upper, 1)], low: pairs[Math.max(upper, 1) - 1] };
}

function between(pairs: readonly PressureTorquePair[], at: (pair: PressureTorquePair) => number, value: number) {
  const { high, low } = around(pairs, at, value);
  if (high === undefined || low === undefined) return undefined;
  const share = (value - at(low)) / (at(high) - at(low));
  return {
    pressure_MPa: low.pressure_MPa + share * (high.pressure_MPa - low.pressure_MPa),
    torque_Nm: low.torque_Nm + share * (high.torque_Nm - low.torque_Nm),
  };
}

/** Straight between two pairs of the chart, written out. */
function readingStep(
  pairs: readonly PressureTorquePair[],
  known: keyof PressureTorquePair,
  from: number,
  step: Pick<WorkingStep, 'symbol' | 'meaning' | 'value' | 'unit'>,
): WorkingStep {
  const { high, low } = around(pairs, (pair) => pair[known], from);
  const wanted = known === 'torque_Nm' ? 'pressure_MPa' : 'torque_Nm';
  const number = (pair: PressureTorquePair | undefined, name: keyof PressureTorquePair) => show(pair?.[name] ?? 0);
  return {
    ...step,
    formula: 'straight between two pairs of the chart',
    substituted: `${number(low, wanted)} + (${show(from)} − ${number(low, known)}) / (${number(high, known)} − ${number(low, known)}) × (${number(high, wanted)} − ${number(low, wanted)})`,
    source: 'entered: the tool’s pressure-torque pairs',
  };
}

/**
 * Pump pressure of a hydraulic wrench, rounded to the gauge's division, with the torque that really results.
 *
 * Source: the tool's pressure-torque pairs, straight between them; no extrapolation.
 * @param input.torque_Nm wanted torque
 * @throws CalcRefusal `out-of-range`, `tool-chart-unusable`, `torque-outside-tool`
 */
export function hydraulicPressure(input: { readonly torque_Nm: number } & HydraulicWrench & Explainable): {
  readonly pressure_MPa: number;
  readonly resultingTorque_Nm: number;
} & Explained {
  const { torque_Nm, pairs, gaugeDivision_MPa } = input;
  requireInRange([
    ['torque_Nm', torque_Nm, POSITIVE],
    ['gaugeDivision_MPa', gaugeDivision_MPa, POSITIVE],
  ]);
  checkPairs(pairs);
  const first = pairs[0];
  const last = pairs.at(-1);
  const outside =
    first === undefined || last === undefined || torque_Nm < first.torque_Nm || torque_Nm > last.torque_Nm;
  if (outside) {
    refuse(
      'torque_Nm',
      'torque-outside-tool',
      `${torque_Nm.toFixed(0)} N·m is outside the tool’s ${first?.torque_Nm} to ${last?.torque_Nm} N·m. Choose another tool.`,
      `${first?.torque_Nm} to ${last?.torque_Nm}`,
    );
  }
  const exact_MPa = between(pairs, (pair) => pair.torque_Nm, torque_Nm)?.pressure_MPa ?? Number.NaN;
  let divisions = Math.round(exact_MPa / gaugeDivision_MPa);
  // Rounding must not leave the chart: the neighbouring mark inside it is taken.
  if (divisions * gaugeDivision_MPa > last.pressure_MPa) divisions = Math.floor(last.pressure_MPa / gaugeDivision_MPa);
  if (divisions * gaugeDivision_MPa < first.pressure_MPa) divisions = Math.ceil(first.pressure_MPa / gaugeDivision_MPa);
  const pressure_MPa = Number((divisions * gaugeDivision_MPa).toPrecision(12));
  if (pressure_MPa > last.pressure_MPa) {
    refuse(
      'gaugeDivision_MPa',
      'gauge-too-coarse',
      `No mark of a gauge with ${gaugeDivision_MPa} MPa divisions lies in the tool’s range. Use a finer gauge.`,
      last.pressure_MPa,
    );
  }
  const resultingTorque_Nm = between(pairs, (pair) => pair.pressure_MPa, pressure_MPa)?.torque_Nm ?? Number.NaN;
  const off = Math.abs(resultingTorque_Nm / torque_Nm - 1);
  const steps = stepsFor(input);
  steps?.push(
    readingStep(pairs, 'torque_Nm', torque_Nm, {
      symbol: 'p',
      meaning: 'pump pressure of the torque, before rounding to the gauge',
      value: exact_MPa,
      unit: 'MPa',
    }),
    {
      symbol: 'p',
      meaning: 'pump pressure at the nearest mark of the gauge',
      formula: 'marks·division',
      substituted: `${divisions} × ${show(gaugeDivision_MPa)}`,
      value: pressure_MPa,
      unit: 'MPa',
      source: 'entered: gauge division',
    },
    readingStep(pairs, 'pressure_MPa', pressure_MPa, {
      symbol: 'T',
      meaning: 'torque that results at that mark',
      value: resultingTorque_Nm,
      unit: 'N·m',
    }),
  );
  return explained(
    { pressure_MPa, resultingTorque_Nm },
    off > 0.03
      ? [
          {
            code: 'gauge-coarse',
            message: `Rounding to the gauge changes the torque by ${(off * 100).toFixed(1)} %. A finer gauge or another tool would come closer.`,
          },
        ]
      : [],
    steps,
  );
}
