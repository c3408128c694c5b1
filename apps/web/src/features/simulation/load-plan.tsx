import { useFormat } from '../../format/format-provider.tsx';
import { standingOf } from './edge-view.ts';
import styles from './simulation.module.css';

interface Props {
  readonly loads_percent: readonly number[];
  /** bolts of this step, clockwise from 1 */
  readonly turned: readonly number[];
  readonly limit_percent: number;
  readonly label: string;
}

const size = 320;
const centre = size / 2;
const circle = 118;

/** The bolts as they are loaded now: coloured by how they stand, and with the load written in each. */
export function LoadPlan({ loads_percent, turned, limit_percent, label }: Props) {
  const format = useFormat();
  const count = loads_percent.length;
  const radius = Math.min(21, (Math.PI * circle) / count - 1.5);
  // Beyond that the numbers would touch: only the bolts that are turned have theirs then.
  const roomy = radius >= 10;
  const place = (index: number, distance: number) => {
    const angle = (2 * Math.PI * index) / count;
    return { x: centre + distance * Math.sin(angle), y: centre - distance * Math.cos(angle) };
  };
  const every = count <= 24 ? 1 : count <= 60 ? 4 : 10;
  return (
    <svg className={styles.drawing} viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label}>
      <circle className={styles.rim} cx={centre} cy={centre} r={circle + 32} />
      <circle className={styles.bore} cx={centre} cy={centre} r={circle - 40} />
      {loads_percent.map((load, index) => {
        const at = place(index, circle);
        const number = place(index, circle - radius - 9);
        const now = turned.includes(index + 1);
        const standing = standingOf(load, limit_percent);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a bolt is its place
          <g key={index}>
            <circle
              className={styles.bolt}
              data-standing={standing}
              data-now={now ? '' : undefined}
              cx={at.x}
              cy={at.y}
              r={radius}
            />
            {(roomy || now) && (
              <text
                className={styles.boltLoad}
                data-standing={standing}
                x={at.x}
                y={at.y}
                fontSize={Math.min(13, radius * 0.8)}
              >
                {format.count(load)}
              </text>
            )}
            {(index % every === 0 || now) && (
              <text className={styles.boltNumber} data-now={now ? '' : undefined} x={number.x} y={number.y}>
                {format.count(index + 1)}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
