import type { CalcTargetResponse } from '@seatwell/contract';

export type Limit = CalcTargetResponse['window']['lower'][number] & { readonly side: 'lower' | 'upper' };

export interface ChartScale {
  /** place of a value, in the drawing's units from the start of the axis */
  readonly at: (value: number) => number;
  readonly ticks: readonly number[];
}

/** An axis from 0 to a round number that holds every value, with about five ticks. */
export function chartScale(values: readonly number[], width: number): ChartScale {
  const most = Math.max(1, ...values) * 1.06;
  const rough = most / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((each) => each * power >= rough) ?? 10) * power;
  const end = Math.ceil(most / step) * step;
  const ticks = Array.from({ length: Math.round(end / step) + 1 }, (_, index) => index * step);
  return { at: (value) => (Math.max(0, value) / end) * width, ticks };
}
