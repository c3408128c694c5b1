import type { CalcTargetResponse } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { phoneQuery, useMediaQuery } from '../../ui/use-media-query.ts';
import { ChartLines, heightOf } from './chart-lines.tsx';
import { chartScale, type Limit } from './chart-scale.ts';
import styles from './joint.module.css';
import { labelLines } from './label-lines.ts';
import { useLimitName } from './use-limit-name.ts';

const wide = { labelWidth: 170, plotWidth: 520, rightEdge: 40 };
const narrow = { labelWidth: 128, plotWidth: 200, rightEdge: 24 };
// Of a small letter, in the drawing's units: wide enough for most lines of most languages.
const letter = 6.2;
const digit = 7.6;
// A number beside its limit keeps this far from the target's line.
const numberWidth = 44;

/** The target's window: what holds it from below, what from above, the target and the spread of the tool. */
export function WindowChart({ answer }: { answer: CalcTargetResponse }) {
  const text = useText('joint');
  const format = useFormat();
  const limitName = useLimitName();
  const { labelWidth, plotWidth, rightEdge } = useMediaQuery(phoneQuery) ? narrow : wide;
  const { lower, upper } = answer.window;
  const limits: Limit[] = [
    ...lower.map((limit) => ({ ...limit, side: 'lower' as const })),
    ...upper.map((limit) => ({ ...limit, side: 'upper' as const })),
  ];
  const { target, spread } = answer;
  const shown = (held: number) => format.toShown('stress', held);
  const scale = chartScale(
    [...limits.map((limit) => shown(limit.boltStress_MPa)), shown(target.boltStress_MPa), shown(spread.high_MPa)],
    plotWidth,
  );
  const x = (held: number) => labelWidth + scale.at(shown(held));
  const floor = Math.max(0, ...lower.filter((limit) => !limit.advisory).map((limit) => limit.boltStress_MPa));
  const firm = upper.filter((limit) => !limit.advisory).map((limit) => limit.boltStress_MPa);
  const ceiling = firm.length > 0 ? Math.min(...firm) : undefined;
  const labels = limits.map((limit) => labelLines(limitName(limit.name), (labelWidth - 8) / letter));
  const rowHeight = 10 + Math.max(...labels.map(heightOf));
  const plotHeight = limits.length * rowHeight;
  const at = x(target.boltStress_MPa);
  const axis = labelLines(
    text('chart-axis', { area: text(`area-${target.area}`), unit: format.unit('stress') }),
    (labelWidth + plotWidth) / letter,
  );
  return (
    <svg
      className={styles.chart}
      viewBox={`0 0 ${labelWidth + plotWidth + rightEdge} ${plotHeight + 38 + heightOf(axis)}`}
      role="img"
      aria-label={text('chart-label', {
        target: format.quantity('stress', target.boltStress_MPa),
        low: format.quantity('stress', floor),
        high: ceiling === undefined ? '' : format.quantity('stress', ceiling),
      })}
    >
      {ceiling !== undefined && ceiling > floor && (
        <rect className={styles.band} x={x(floor)} y={0} width={x(ceiling) - x(floor)} height={plotHeight} />
      )}
      {limits.map((limit, index) => {
        const middle = (index + 0.5) * rowHeight;
        const edge = x(limit.boltStress_MPa);
        const isLower = limit.side === 'lower';
        const crosses = Math.abs(at - edge) < numberWidth;
        const number = format.value('stress', limit.boltStress_MPa);
        const clear = edge - labelWidth > digit * number.length + 2;
        const after = isLower !== crosses || !clear;
        return (
          <g key={`${limit.side} ${limit.name}`} data-advisory={limit.advisory ? '' : undefined}>
            <ChartLines lines={labels[index] ?? []} x={labelWidth - 8} y={middle + 5} />
            <rect
              className={styles.bar}
              x={isLower ? labelWidth : edge}
              y={middle - 5}
              width={isLower ? edge - labelWidth : labelWidth + plotWidth - edge}
              height={10}
            />
            <line className={styles.tick} x1={edge} x2={edge} y1={middle - 9} y2={middle + 9} />
            <text
              className={styles.value}
              x={after ? edge + 5 : edge - 5}
              y={middle + 5}
              textAnchor={after ? 'start' : 'end'}
            >
              {number}
            </text>
          </g>
        );
      })}
      <line
        className={styles.axis}
        x1={labelWidth}
        x2={labelWidth + plotWidth}
        y1={plotHeight + 2}
        y2={plotHeight + 2}
      />
      {scale.ticks.map((tick) => {
        const place = labelWidth + scale.at(tick);
        return (
          <g key={tick}>
            <line className={styles.axis} x1={place} x2={place} y1={plotHeight + 2} y2={plotHeight + 7} />
            {Math.abs(place - at) > 30 && (
              <text x={place} y={plotHeight + 22} textAnchor="middle">
                {format.count(tick)}
              </text>
            )}
          </g>
        );
      })}
      {[spread.low_MPa, spread.high_MPa].map((edge) => (
        <line key={edge} className={styles.spread} x1={x(edge)} x2={x(edge)} y1={0} y2={plotHeight} />
      ))}
      <line className={styles.target} x1={at} x2={at} y1={-4} y2={plotHeight + 6} />
      <text className={styles.targetValue} x={at} y={plotHeight + 22} textAnchor="middle">
        {format.value('stress', target.boltStress_MPa)}
      </text>
      <ChartLines lines={axis} x={labelWidth + plotWidth} y={plotHeight + 37 + heightOf(axis) / 2} />
    </svg>
  );
}
