import type { Explained, TargetAnswer } from '@seatwell/calc';
import { useState } from 'react';
import { useSaid } from '../../app/use-said.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { threadName } from '../../format/fractions.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Notice } from '../../ui/notice.tsx';
import { Table } from '../../ui/table.tsx';
import { phoneQuery, useMediaQuery } from '../../ui/use-media-query.ts';
import { NoWindow } from '../joint/no-window.tsx';
import { useLimitName } from '../joint/use-limit-name.ts';
import { WindowChart } from '../joint/window-chart.tsx';
import { WindowTable } from '../joint/window-table.tsx';
import { WorkingSteps } from '../joint/working-steps.tsx';
import { studsOf } from './answer.ts';
import styles from './calculator.module.css';
import type { Inputs } from './inputs.ts';
import { FlangeStresses, Sensitivities } from './more-answers.tsx';

type Answer = TargetAnswer & Explained;

/** What the bolts are set to, between which limits, what governs, and how it was worked out. */
export function TargetAnswerView({ answer, inputs }: { answer: Answer; inputs: Inputs }) {
  const text = useText('calculator');
  const said = useSaid('calculation', useLimitName());
  const format = useFormat();
  const limitName = useLimitName();
  const phone = useMediaQuery(phoneQuery);
  const [chosen, setChosen] = useState<boolean>();
  const asTable = chosen ?? phone;
  const [working, setWorking] = useState(false);
  const [sensitive, setSensitive] = useState(false);
  const { target, spread, window } = answer;
  const studs = studsOf(inputs);
  return (
    <>
      <section className={styles.result}>
        <SetValue answer={answer} />
        <NoWindow window={window} />
        {window.open && !spread.insideWindow && (
          <Notice kind="attention" title={text('spread-outside')}>
            <p>{text('spread-outside-detail')}</p>
          </Notice>
        )}
        <KeyValues
          items={[
            { name: text('governs'), value: limitName(target.governedBy) },
            {
              name: text('bolt-stress'),
              value: text('stress-on', {
                stress: format.quantity('stress', target.boltStress_MPa),
                area: text(`area-${target.area}`),
              }),
            },
            { name: text('bolt-load'), value: format.quantity('load', target.boltLoad_N) },
            { name: text('gasket-stress'), value: format.quantity('stress', target.gasketStress_MPa) },
            { name: text('spread'), value: format.range('stress', spread.low_MPa, spread.high_MPa) },
            { name: text('later'), value: said(retightened(answer)) },
            ...(studs === undefined
              ? []
              : [
                  {
                    name: text('studs'),
                    value: text('studs-of', {
                      count: format.count(studs.count),
                      thread: threadName(studs.thread),
                      length: format.quantity('length', studs.length_mm),
                    }),
                  },
                ]),
            ...(answer.tool.acrossFlats_mm === undefined
              ? []
              : [{ name: text('socket'), value: format.quantity('length', answer.tool.acrossFlats_mm) }]),
          ]}
        />
      </section>
      <section className={styles.result}>
        <h2>{text('window')}</h2>
        {asTable ? (
          <WindowTable answer={answer} />
        ) : (
          <div className={styles.scroll}>
            <WindowChart answer={answer} />
          </div>
        )}
        <span className={styles.buttons}>
          <Button kind="quiet" onClick={() => setChosen(!asTable)}>
            {text(asTable ? 'as-chart' : 'as-table')}
          </Button>
          <Button kind="quiet" expanded={working} onClick={() => setWorking(!working)}>
            {text(working ? 'hide-working' : 'show-working')}
          </Button>
          <Button kind="quiet" expanded={sensitive} onClick={() => setSensitive(!sensitive)}>
            {text(sensitive ? 'hide-sensitivities' : 'show-sensitivities')}
          </Button>
        </span>
      </section>
      <Passes answer={answer} />
      {answer.flangeStress && <FlangeStresses states={answer.flangeStress} />}
      {sensitive && <Sensitivities inputs={inputs} />}
      {answer.warnings.length > 0 && (
        <Notice kind="attention" title={text('warnings')}>
          <ul>
            {answer.warnings.map((warning) => (
              <li key={`${warning.code} ${warning.message}`}>{said(warning)}</li>
            ))}
          </ul>
        </Notice>
      )}
      {working && <WorkingSteps caption={text('working')} steps={answer.working ?? []} />}
    </>
  );
}

function SetValue({ answer }: { answer: Answer }) {
  const text = useText('calculator');
  const format = useFormat();
  const { torque_Nm, pressure_MPa, resultingTorque_Nm, elongation_mm, toolLoad_N } = answer.tool;
  if (pressure_MPa !== undefined)
    return (
      <p className={styles.set}>
        <strong>{format.quantity('pressure', pressure_MPa)}</strong>{' '}
        {resultingTorque_Nm === undefined
          ? text('pump-load', { load: format.quantity('load', toolLoad_N ?? null) })
          : text('pump-torque', {
              torque: format.quantity('torque', resultingTorque_Nm),
              wanted: format.quantity('torque', torque_Nm ?? null),
            })}
      </p>
    );
  if (elongation_mm !== undefined)
    return (
      <p className={styles.set}>
        <strong>{format.quantity('gap', elongation_mm)}</strong> {text('elongation')}
      </p>
    );
  if (torque_Nm === undefined) return <p>{text('no-setting')}</p>;
  return (
    <p className={styles.set}>
      <strong>{format.quantity('torque', torque_Nm)}</strong> {text('full-torque')}
    </p>
  );
}

function Passes({ answer }: { answer: Answer }) {
  const text = useText('calculator');
  const format = useFormat();
  const rows = answer.passes.map((pass, index) => ({ ...pass, number: index + 1 }));
  const has = (name: 'torque_Nm' | 'pressure_MPa' | 'elongation_mm') => rows.some((row) => row[name] !== undefined);
  return (
    <Table
      caption={text('per-pass')}
      rows={rows}
      rowKey={(row) => String(row.number)}
      onPhone="table"
      columns={[
        {
          key: 'pass',
          header: text('pass'),
          rowHeader: true,
          cell: (row) =>
            text('pass-at', { pass: format.count(row.number), percent: format.percent(row.percent / 100) }),
        },
        ...(has('torque_Nm')
          ? [
              {
                key: 'torque',
                header: text('torque'),
                numeric: true,
                cell: (row: (typeof rows)[number]) => format.quantity('torque', row.torque_Nm),
              },
            ]
          : []),
        ...(has('pressure_MPa')
          ? [
              {
                key: 'pump',
                header: text('pump'),
                numeric: true,
                cell: (row: (typeof rows)[number]) =>
                  row.pressure_MPa === undefined ? text('below-chart') : format.quantity('pressure', row.pressure_MPa),
              },
            ]
          : []),
        ...(has('elongation_mm')
          ? [
              {
                key: 'long',
                header: text('elongation'),
                numeric: true,
                cell: (row: (typeof rows)[number]) => format.quantity('gap', row.elongation_mm),
              },
            ]
          : []),
      ]}
    />
  );
}

/** When the joint may be retightened, by the code of its gasket's rule. */
const retightened = ({ retightening: { afterHot, sentence } }: Answer) => ({
  code: `retightening-${afterHot}`,
  message: sentence,
});
