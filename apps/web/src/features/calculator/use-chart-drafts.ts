import { useEffect, useState } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { type PairDraft, readPairs } from '../tools/calibration-pairs.ts';
import { asInput, type ChartPair, writeChart } from './inputs.ts';

const leastLines = 3;

/** The chart as somebody types it: lines half filled in stay on the screen, whole charts go into the inputs. */
export function useChartDrafts(pairs: readonly ChartPair[], onPairs: (pairs: readonly ChartPair[]) => void) {
  const format = useFormat();
  const shown = (quantity: 'pressure' | 'torque', held: number) =>
    Number(format.toShown(quantity, held).toPrecision(9));
  const asDrafts = (): readonly PairDraft[] => {
    const lines: PairDraft[] = pairs.map((pair) => ({
      pressure: shown('pressure', pair.pressure_MPa),
      torque: shown('torque', pair.torque_Nm),
    }));
    while (lines.length < leastLines) lines.push({ pressure: undefined, torque: undefined });
    return lines;
  };
  const [drafts, setDrafts] = useState(asDrafts);
  const [kept, setKept] = useState(writeChart(pairs));
  const written = writeChart(pairs);

  // biome-ignore lint/correctness/useExhaustiveDependencies: only a chart from elsewhere replaces what is typed
  useEffect(() => {
    if (written === kept) return;
    setKept(written);
    setDrafts(asDrafts());
  }, [written]);

  const change = (next: readonly PairDraft[]) => {
    setDrafts(next);
    const read = readPairs(next);
    const whole = typeof read === 'string' ? [] : read;
    const held = whole.map(({ pressure, torque }) => ({
      pressure_MPa: Number(asInput(format.toHeld('pressure', pressure))),
      torque_Nm: Number(asInput(format.toHeld('torque', torque))),
    }));
    setKept(writeChart(held));
    onPairs(held);
  };
  return [drafts, change] as const;
}
