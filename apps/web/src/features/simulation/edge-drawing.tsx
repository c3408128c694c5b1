import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { edgeView } from './edge-view.ts';
import styles from './simulation.module.css';

interface Props {
  readonly gap_mm: readonly number[];
  /** gap before tightening: where the drawing starts from */
  readonly start_mm: number;
  readonly factor: number;
}

const width = 320;
const height = 96;
const thickness = 18;

/** The two flanges from their edge, with the tilt drawn larger than it is. */
export function EdgeDrawing({ gap_mm, start_mm, factor }: Props) {
  const text = useText('simulation');
  const format = useFormat();
  const { wide, narrow, difference_mm } = edgeView(gap_mm);
  const middle = height / 2 + 14;
  // The mean closure is drawn as it is small; what is exaggerated is the difference across the flange.
  const mean = (wide.gap_mm + narrow.gap_mm) / 2;
  const open = 8 + 10 * Math.min(1, mean / start_mm);
  const half = Math.min(24, (difference_mm / 2) * factor);
  const left = middle - open - half;
  const right = middle - open + half;
  const [x1, x2] = [24, width - 24];
  return (
    <figure className={styles.edge}>
      <svg
        className={styles.drawing}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={text('edge-label', {
          wide: format.quantity('gap', wide.gap_mm),
          wideBolt: format.count(wide.bolt),
          narrow: format.quantity('gap', narrow.gap_mm),
          narrowBolt: format.count(narrow.bolt),
        })}
      >
        <polygon
          className={styles.gasket}
          points={`${x1 + 40},${left + ((right - left) * 40) / (x2 - x1)} ${x2 - 40},${right - ((right - left) * 40) / (x2 - x1)} ${x2 - 40},${middle} ${x1 + 40},${middle}`}
        />
        <rect className={styles.flange} x={x1} y={middle} width={x2 - x1} height={thickness} />
        <polygon
          className={styles.flange}
          points={`${x1},${left - thickness} ${x2},${right - thickness} ${x2},${right} ${x1},${left}`}
        />
        <text className={styles.gapText} x={2} y={height - 4} textAnchor="start">
          {text('at-bolt', { bolt: format.count(wide.bolt), gap: format.quantity('gap', wide.gap_mm) })}
        </text>
        <text className={styles.gapText} x={width - 2} y={height - 4} textAnchor="end">
          {text('at-bolt', { bolt: format.count(narrow.bolt), gap: format.quantity('gap', narrow.gap_mm) })}
        </text>
      </svg>
      <figcaption className={styles.soft}>{text('edge-factor', { factor: format.count(factor) })}</figcaption>
    </figure>
  );
}
