import type { MakeAnswer } from '@seatwell/contract';
import { computedPasses, type MakeState } from '@seatwell/workflow';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './joint.module.css';

interface PassRow {
  readonly key: string;
  readonly name: string;
  readonly torque_Nm: number | null;
  /** of computed loads: every set value of the pass, the highest first */
  readonly torques_Nm?: readonly number[];
  readonly pressure_MPa: number | null;
  readonly elongation_mm?: number | undefined;
  /** of a tensioner: the pressure of each group */
  readonly pressures_MPa?: readonly number[] | undefined;
  readonly state: string;
  readonly stopped: boolean;
}

/** The passes of the procedure with their set values, and how far they have come. */
export function PassesTable({ make, state }: { make: MakeAnswer; state: MakeState | undefined }) {
  const text = useText('joint');
  const format = useFormat();
  const rows = usePassRows(make, state);
  if (rows.length === 0) {
    return (
      <section className={styles.block}>
        <h2>{text('passes')}</h2>
        <p className={styles.soft}>{text('no-passes')}</p>
      </section>
    );
  }
  const pumped = rows.some((row) => row.pressure_MPa !== null);
  return (
    <section className={styles.block}>
      <Table
        caption={text('passes')}
        rows={rows}
        rowKey={(row) => row.key}
        onPhone="table"
        columns={[
          { key: 'pass', header: text('pass'), rowHeader: true, cell: (row) => row.name },
          {
            key: 'set',
            header: text('set'),
            numeric: true,
            cell: (row) =>
              row.elongation_mm !== undefined
                ? format.quantity('gap', row.elongation_mm)
                : (row.torques_Nm ?? [row.torque_Nm]).map((torque) => format.quantity('torque', torque)).join(', '),
          },
          ...(pumped
            ? [
                {
                  key: 'pump',
                  header: text('pump'),
                  numeric: true,
                  cell: (row: PassRow) =>
                    (row.pressures_MPa ?? [row.pressure_MPa])
                      .map((pressure) => format.quantity('pressure', pressure))
                      .join(' / '),
                },
              ]
            : []),
          {
            key: 'state',
            header: text('state'),
            cell: (row) => (row.stopped ? <span className={styles.stop}>{row.state}</span> : row.state),
          },
        ]}
      />
    </section>
  );
}

function usePassRows(make: MakeAnswer, state: MakeState | undefined): readonly PassRow[] {
  const text = useText('joint');
  const format = useFormat();
  const content = make.procedure?.content;
  if (!content) return [];
  const passState = (pass: number): Pick<PassRow, 'state' | 'stopped'> => {
    const record = state?.passes.filter((each) => each.pass === pass).at(-1);
    const done = state !== undefined && state.nextPass > pass;
    if (done)
      return { stopped: false, state: record ? text('done-at', { at: format.dayTime(record.endedAt) }) : text('done') };
    if (record && !record.finished)
      return {
        stopped: true,
        state: record.lastBolt === null ? text('stopped') : text('stopped-at', { bolt: format.count(record.lastBolt) }),
      };
    return { stopped: false, state: text('to-do') };
  };
  const passes =
    make.target?.passes ??
    content.passPercents.map((percent) => ({ percent, torque_Nm: null, pressure_MPa: null, elongation_mm: undefined }));
  const named = (index: number, percent: number) => ({
    key: String(index),
    name: text('pass-percent', { pass: format.count(index + 1), percent: format.percent(percent / 100) }),
    ...passState(index + 1),
  });
  const computed = state ? computedPasses(state) : null;
  const rows: PassRow[] = computed
    ? computed.map(({ level_percent, setValues_Nm }, index) => ({
        ...named(index, Math.round(level_percent)),
        torque_Nm: setValues_Nm.at(-1) ?? null,
        torques_Nm: [...setValues_Nm].reverse(),
        pressure_MPa: null,
      }))
    : passes.map(({ percent, torque_Nm, pressure_MPa, elongation_mm }, index) => ({
        ...named(index, percent),
        torque_Nm,
        pressure_MPa,
        elongation_mm,
        pressures_MPa: state?.target?.tensioning?.passes[index]?.groupPressures_MPa,
      }));
  const last: Pick<PassRow, 'torque_Nm' | 'pressure_MPa' | 'elongation_mm'> = passes.at(-1) ?? {
    torque_Nm: null,
    pressure_MPa: null,
  };
  const extra = (key: string, name: string, told: string): PassRow => ({
    key,
    name,
    torque_Nm: last.torque_Nm,
    pressure_MPa: last.pressure_MPa,
    elongation_mm: last.elongation_mm,
    stopped: false,
    state: told,
  });
  const tightAt = state?.tightAt ?? null;
  if (content.finalRound)
    rows.push(
      extra(
        'final',
        text('final-round'),
        tightAt === null ? text('until-no-nut-moves') : text('done-at', { at: format.dayTime(tightAt) }),
      ),
    );
  if (content.relaxationPass)
    rows.push(extra('relaxation', text('relaxation-pass'), state?.relaxationDone ? text('done') : text('to-do')));
  return rows;
}
