import { useSaid } from '../../app/use-said.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Notice } from '../../ui/notice.tsx';
import { Table } from '../../ui/table.tsx';
import { Refused } from '../calculator/refused.tsx';
import type { ComputedAnswer, ComputedPlanAnswer } from './computed-answer.ts';
import { setValuesOf } from './set-values.ts';
import styles from './simulation.module.css';
import { TiltsMoreNotice } from './tilts-more-notice.tsx';

interface Props {
  readonly computed: ComputedAnswer | undefined;
  readonly onShow: () => void;
}

/** Computed loads: the set values of each pass with their bolts, what comes of them, or why there are none. */
export function ComputedSection({ computed, onShow }: Props) {
  const text = useText('simulation');
  const said = useSaid('calculation');
  return (
    <section className={styles.section}>
      <h2>{text('computed-loads')}</h2>
      <p className={styles.soft}>{text('computed-what')}</p>
      {computed === undefined && <p>{text('computed-needs')}</p>}
      {computed !== undefined && 'refused' in computed && (
        <Refused title={text('computed-refused')} items={computed.refused} />
      )}
      {computed !== undefined && !('refused' in computed) && !computed.worthwhile && (
        <Notice title={text('nothing-to-gain')}>
          <p>{said(computed.statement)}</p>
        </Notice>
      )}
      {computed !== undefined && !('refused' in computed) && computed.worthwhile && (
        <Plan computed={computed} onShow={onShow} />
      )}
    </section>
  );
}

function Plan({ computed, onShow }: { readonly computed: ComputedPlanAnswer; readonly onShow: () => void }) {
  const text = useText('simulation');
  const said = useSaid('calculation');
  const format = useFormat();
  const { final, band, cap, passes, plan } = computed;
  const rows = setValuesOf(passes).map((row) => ({ ...row, share: row.torque_Nm / computed.torque_Nm }));
  const round = (value: number) => format.count(Math.round(value));
  return (
    <>
      <Table
        caption={text('computed-caption')}
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
          { key: 'share', header: text('of-target'), numeric: true, cell: (row) => format.percent(row.share) },
          { key: 'bolts', header: text('bolts'), cell: (row) => row.bolts },
        ]}
      />
      <KeyValues
        items={[
          {
            name: text('computed-final'),
            value: text('from-to', { from: round(final?.min ?? 0), to: round(final?.max ?? 0) }),
          },
          {
            name: text('computed-band'),
            value: text('from-to', { from: round(band?.min ?? 0), to: round(band?.max ?? 0) }),
          },
          {
            name: text('computed-saved'),
            value: text('saved-of', {
              moves: format.count(computed.moves),
              usual: format.count(plan.conventional.moves),
              saved: format.count(computed.movesSaved),
              passes: format.count(computed.passesSaved),
            }),
          },
          {
            name: text('computed-turns'),
            value: text('turns-of', {
              turns: format.count(computed.turns),
              usual: format.count(plan.usualTurns),
              time: format.duration(plan.time_min),
              usualTime: format.duration(plan.usualTime_min),
            }),
          },
          { name: text('computed-cap'), value: text(`cap-${capName(cap.governedBy)}`, { cap: round(cap.percent) }) },
          { name: text('computed-peak'), value: format.quantity('stress', computed.gasketPeak_MPa ?? null) },
          {
            name: text('tilt-largest'),
            value: text('tilt-against', {
              tilt: format.quantity('gap', computed.largestTilt_mm ?? null),
              usual: format.quantity('gap', plan.conventional.largestParallelism_mm),
            }),
          },
        ]}
      />
      {computed.warnings.map((warning) => (
        <p key={warning.code}>{said(warning)}</p>
      ))}
      <TiltsMoreNotice tilt_mm={computed.largestTilt_mm} usual_mm={plan.conventional.largestParallelism_mm} />
      <span>
        <Button onClick={onShow}>{text('computed-show')}</Button>
      </span>
    </>
  );
}

const capName = (governedBy: string): 'bolt' | 'gasket' => (governedBy === 'gasket' ? 'gasket' : 'bolt');
