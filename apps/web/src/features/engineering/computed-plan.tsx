import type { TighteningPlan } from '@seatwell/workflow';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import { useLimitName } from '../joint/use-limit-name.ts';
import { setValuesOf } from '../simulation/set-values.ts';
import { TiltsMoreNotice } from '../simulation/tilts-more-notice.tsx';
import { Validity } from '../simulation/validity.tsx';
import styles from './engineering.module.css';

type Computed = Extract<TighteningPlan, { way: 'computed-loads' }>;

/** Set values of each pass with the bolts that take them, and what comes of it. */
export function ComputedPlan({ plan }: { readonly plan: Computed }) {
  const text = useText('engineering');
  const format = useFormat();
  const limitName = useLimitName();
  const rows = setValuesOf(plan.passes);
  return (
    <section className={styles.form}>
      <Table
        caption={text('computed-caption', { moves: format.count(plan.moves) })}
        rows={rows}
        rowKey={(row) => `${row.pass} ${row.torque_Nm}`}
        onPhone="table"
        columns={[
          { key: 'pass', header: text('pass'), rowHeader: true, cell: (row) => format.count(row.pass) },
          {
            key: 'value',
            header: text('set-value'),
            numeric: true,
            cell: (row) => format.quantity('torque', row.torque_Nm),
          },
          { key: 'bolts', header: text('places'), cell: (row) => row.bolts },
        ]}
      />
      <p>
        {text('computed-result', {
          min: format.count(Math.round(plan.final.min)),
          max: format.count(Math.round(plan.final.max)),
          low: format.count(Math.round(plan.band.min)),
          high: format.count(Math.round(plan.band.max)),
          saved: format.count(plan.movesSaved),
        })}
      </p>
      <p>
        {text('computed-tilt', {
          tilt: format.quantity('gap', plan.tilt_mm),
          usual: format.quantity('gap', plan.usualTilt_mm),
        })}
      </p>
      <TiltsMoreNotice tilt_mm={plan.tilt_mm} usual_mm={plan.usualTilt_mm} />
      <p className={styles.soft}>
        {text('computed-cap', {
          cap: format.count(Math.round(plan.cap_percent)),
          limit: limitName(plan.capGovernedBy),
        })}
      </p>
      <Validity />
    </section>
  );
}
