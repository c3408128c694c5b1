import type { TodayAnswer } from '@seatwell/contract';
import { finishAtPace, standing } from '@seatwell/workflow';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Chart } from '../../ui/chart.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './curve.module.css';
import { layOutCurve } from './curve-layout.ts';

interface Props {
  readonly curve: TodayAnswer['curve'];
  readonly total: number;
  /** the running day of the shutdown, 2027-03-09 */
  readonly today: string;
}

/** Joints tight day by day against the plan, in words, as a drawing, and as a table at a press. */
export function Curve({ curve, total, today }: Props) {
  const text = useText('today');
  return (
    <Chart
      title={text('curve')}
      toTable={text('curve-as-table')}
      toDrawing={text('curve-as-drawing')}
      words={<CurveWords curve={curve} total={total} today={today} />}
      table={<CurveTable curve={curve} />}
    >
      <CurveDrawing curve={curve} total={total} />
    </Chart>
  );
}

function CurveWords({ curve, total, today }: Props) {
  const text = useText('today');
  const format = useFormat();
  const stand = standing(curve);
  const finish = finishAtPace(curve, total, today);
  const planEnd = curve.plan.at(-1)?.day;
  return (
    <div className={styles.words}>
      {stand && (
        <p>
          <strong>
            {stand.ahead === 0
              ? text('curve-on-plan')
              : text(stand.ahead > 0 ? 'curve-ahead' : 'curve-behind', {
                  count: Math.abs(stand.ahead),
                  shown: format.count(Math.abs(stand.ahead)),
                })}
          </strong>{' '}
          {text('curve-counts', { actual: format.count(stand.actual), planned: format.count(stand.planned) })}
        </p>
      )}
      {finish && (
        <p className={styles.soft}>
          {text('curve-pace', {
            day: format.calendarDay(finish.on),
            perDay: format.number(finish.perDay, 1),
            days: format.count(finish.days),
            left: format.count(finish.left),
          })}{' '}
          {finish.latest === null
            ? text('curve-range-open', { from: format.calendarDay(finish.earliest) })
            : text('curve-range', {
                from: format.calendarDay(finish.earliest),
                to: format.calendarDay(finish.latest),
              })}{' '}
          {text('curve-not-in')}
        </p>
      )}
      {!finish && stand && stand.actual < total && <p className={styles.soft}>{text('curve-no-pace')}</p>}
      {planEnd && <p className={styles.soft}>{text('curve-plan-ends', { day: format.calendarDay(planEnd) })}</p>}
      {curve.unplanned > 0 && (
        <p className={styles.soft}>
          {text('curve-unplanned', { count: curve.unplanned, shown: format.count(curve.unplanned) })}
        </p>
      )}
    </div>
  );
}

function CurveDrawing({ curve, total }: Pick<Props, 'curve' | 'total'>) {
  const text = useText('today');
  const format = useFormat();
  const layout = layOutCurve(curve, total, { width: 372, height: 140 });
  const [first, last] = [layout.days[0], layout.days.at(-1)];
  return (
    <figure className={styles.figure}>
      <svg viewBox={`0 -4 ${layout.width} ${layout.height + 6}`} role="img" aria-label={text('curve-drawing')}>
        <line className={styles.base} x1="0" x2={layout.width} y1={layout.baseline} y2={layout.baseline} />
        <line className={styles.top} x1="0" x2={layout.width} y1="8" y2="8" />
        <path className={styles.plan} d={layout.plan} />
        <path className={styles.actual} d={layout.actual} />
        {layout.end && <circle className={styles.end} cx={layout.end.x} cy={layout.end.y} r="4.5" />}
      </svg>
      <figcaption className={styles.foot}>
        <span>{first && format.calendarDay(first)}</span>
        <span>{text('curve-key', { total: format.count(total) })}</span>
        <span>{last && format.calendarDay(last)}</span>
      </figcaption>
    </figure>
  );
}

function CurveTable({ curve }: Pick<Props, 'curve'>) {
  const text = useText('today');
  const format = useFormat();
  const actual = new Map(curve.actual.map((point) => [point.day, point.count]));
  return (
    <Table
      caption={text('curve')}
      captionHidden
      rows={curve.plan}
      rowKey={(row) => row.day}
      columns={[
        { key: 'day', header: text('day'), rowHeader: true, cell: (row) => format.calendarDay(row.day) },
        { key: 'plan', header: text('plan'), numeric: true, cell: (row) => format.count(row.count) },
        {
          key: 'actual',
          header: text('actual'),
          numeric: true,
          cell: (row) => {
            const count = actual.get(row.day);
            return count === undefined ? '' : format.count(count);
          },
        },
      ]}
    />
  );
}
