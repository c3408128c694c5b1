import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { standingOf } from './edge-view.ts';
import type { SimulatedPattern } from './run-simulation.ts';
import styles from './simulation.module.css';

interface Props {
  readonly pattern: SimulatedPattern;
  readonly limit_percent: number;
}

const width = 320;
const height = 120;

/** The loads at the end, bolt by bolt, with the limit and the band of the lowest. */
export function FinalBars({ pattern, limit_percent }: Props) {
  const text = useText('simulation');
  const format = useFormat();
  const { simulation, band } = pattern;
  const loads = simulation.steps.at(-1)?.loads_percent ?? [];
  const most = Math.max(120, ...loads) * 1.02;
  const y = (load: number) => height - (load / most) * height;
  const step = width / Math.max(1, loads.length);
  return (
    <figure className={styles.edge}>
      <svg
        className={styles.drawing}
        viewBox={`0 0 ${width} ${height + 16}`}
        role="img"
        aria-label={text('bars-label', {
          min: format.count(simulation.final.min),
          max: format.count(simulation.final.max),
        })}
      >
        <rect
          className={styles.lowest}
          x="0"
          width={width}
          y={y(band.high.min)}
          height={Math.max(1, y(band.low.min) - y(band.high.min))}
        />
        {loads.map((load, index) => (
          <rect
            // biome-ignore lint/suspicious/noArrayIndexKey: a bolt is its place
            key={index}
            className={styles.bar}
            data-standing={standingOf(load, limit_percent)}
            x={index * step + step * 0.15}
            width={step * 0.7}
            y={y(load)}
            height={height - y(load)}
          />
        ))}
        {[100 - limit_percent, 100, 100 + limit_percent].map((level) => (
          <line
            key={level}
            className={level === 100 ? styles.target : styles.limit}
            x1="0"
            x2={width}
            y1={y(level)}
            y2={y(level)}
          />
        ))}
        <line className={styles.base} x1="0" x2={width} y1={height} y2={height} />
        <text className={styles.gapText} x="0" y={height + 13}>
          {format.count(1)}
        </text>
        <text className={styles.gapText} x={width} y={height + 13} textAnchor="end">
          {format.count(loads.length)}
        </text>
      </svg>
      <figcaption className={styles.soft}>
        {text('bars-key', {
          low: format.count(band.low.min),
          high: format.count(band.high.min),
          limit: format.count(limit_percent),
        })}
      </figcaption>
    </figure>
  );
}
