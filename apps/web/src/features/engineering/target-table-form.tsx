import { BOLTING_GRADES } from '@seatwell/calc';
import { STANDARDS } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { useDeferredValue, useMemo, useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { gasketDataQuery, lubricantsQuery, proceduresQuery } from '../../app/reads.ts';
import { newId } from '../../app/send-command.ts';
import { useSiteCommand } from '../../app/use-command.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { DecisionDialog } from '../joint/decision-dialog.tsx';
import { ratingsOf } from '../register/standard-flange.ts';
import styles from './engineering.module.css';
import { approvable, familyRows } from './family-rows.ts';
import { FamilyTable } from './family-table.tsx';
import { TickList } from './tick-list.tsx';
import { useBoltsWords } from './use-bolts-words.ts';

/** Makes a target table: the family is chosen, every size is calculated, and the engineer signs what is covered. */
export function TargetTableForm({ onDone }: { onDone: () => void }) {
  const text = useText('engineering');
  const trade = useTrade();
  const format = useFormat();
  const boltsWords = useBoltsWords();
  const procedures = useQuery(proceduresQuery);
  const gaskets = useQuery(gasketDataQuery);
  const lubricants = useQuery(lubricantsQuery);
  const approve = useSiteCommand('target-table-approved');
  const [name, setName] = useState('');
  const [procedureKey, setProcedureKey] = useState('');
  const [gasketDataId, setGasketDataId] = useState('');
  const [lubricantId, setLubricantId] = useState('');
  const [grade, setGrade] = useState('');
  const [standard, setStandard] = useState<(typeof STANDARDS)[number]>('ASME-B16.5');
  const [ratings, setRatings] = useState<string[]>([]);
  const [pressure_MPa, setPressure] = useState<number | undefined>();
  const [temperature_C, setTemperature] = useState<number | undefined>();
  const [shortfall, setShortfall] = useState('');
  const [signing, setSigning] = useState(false);

  const approved = (procedures.data?.rows ?? []).filter((row) => row.state === 'approved');
  const procedure = approved.find((row) => `${row.procedureId} ${row.revision}` === procedureKey);
  const gasket = gaskets.data?.rows.find((row) => row.dataId === gasketDataId);
  const lubricant = lubricants.data?.rows.find((row) => row.dataId === lubricantId);
  const family = useMemo(
    () =>
      procedure && gasket && lubricant && grade !== '' && pressure_MPa !== undefined && temperature_C !== undefined
        ? {
            standard,
            ratings,
            grade,
            procedure: procedure.content,
            gasket: gasket.content,
            lubricant: lubricant.content,
            pressure_MPa,
            temperature_C,
          }
        : undefined,
    [procedure, gasket, lubricant, grade, standard, ratings, pressure_MPa, temperature_C],
  );
  const shown = useDeferredValue(family);
  const rows = useMemo(() => shown && familyRows(shown), [shown]);
  const covered = rows && !('refused' in rows) ? approvable(standard, rows, shortfall.trim()) : [];
  const missing =
    name.trim() === ''
      ? text('name-needed')
      : !family
        ? text('family-incomplete')
        : covered.length === 0
          ? text('nothing-covered')
          : undefined;
  const send = (signature: Parameters<typeof approve.mutate>[0]['signature']) => {
    if (!procedure) return;
    const tableId = newId();
    approve.mutate(
      {
        subjectId: tableId,
        signature: signature ?? null,
        payload: {
          tableId,
          name: name.trim(),
          procedureId: procedure.procedureId,
          procedureRevision: procedure.revision,
          gasketDataId,
          lubricantId,
          boltGrade: grade,
          rows: covered,
        },
      },
      { onSuccess: onDone },
    );
  };
  return (
    <section className={styles.form}>
      <h2>{text('make-table')}</h2>
      <ErrorNotice error={procedures.error ?? gaskets.error ?? lubricants.error} />
      <div className={styles.pair}>
        <TextField label={text('name')} value={name} onChange={setName} />
        <Select
          label={text('procedure')}
          value={procedureKey}
          onChange={setProcedureKey}
          options={approved.map((row) => ({
            value: `${row.procedureId} ${row.revision}`,
            label: text('revision-of', { code: row.code, revision: row.revision }),
            detail: row.title,
          }))}
        />
        <Select
          label={text('gasket-data')}
          value={gasketDataId}
          onChange={setGasketDataId}
          options={(gaskets.data?.rows ?? []).map((row) => ({
            value: row.dataId,
            label: row.name,
            detail: trade.word('family', row.content.family),
          }))}
        />
        <Select
          label={text('lubricant')}
          value={lubricantId}
          onChange={setLubricantId}
          options={(lubricants.data?.rows ?? []).map((row) => ({ value: row.dataId, label: row.name }))}
        />
        <Combobox
          label={text('grade')}
          value={grade}
          onChange={setGrade}
          options={BOLTING_GRADES.map((value) => ({ value, label: value }))}
        />
        <Select
          label={text('standard')}
          value={standard}
          onChange={(value) => {
            setStandard(value);
            setRatings([]);
          }}
          options={STANDARDS.filter((value) => value !== 'custom').map((value) => ({
            value,
            label: trade.word('standard', value),
          }))}
        />
        <NumberField
          label={text('highest-pressure')}
          unit={format.unit('pressure')}
          value={pressure_MPa === undefined ? undefined : format.toShown('pressure', pressure_MPa)}
          onChange={(value) => setPressure(value === undefined ? undefined : format.toHeld('pressure', value))}
        />
        <NumberField
          label={text('highest-temperature')}
          unit={format.unit('temperature')}
          value={temperature_C === undefined ? undefined : format.toShown('temperature', temperature_C)}
          onChange={(value) => setTemperature(value === undefined ? undefined : format.toHeld('temperature', value))}
        />
      </div>
      <TickList
        label={text('ratings')}
        options={ratingsOf(standard, '')}
        word={(rating) => trade.flange('', rating)}
        value={ratings}
        onChange={setRatings}
      />
      <TextField
        label={text('shortfall')}
        optional
        hint={text('table-shortfall-hint')}
        value={shortfall}
        onChange={setShortfall}
      />
      {rows && <FamilyTable rows={rows} shortfall={shortfall.trim()} />}
      {procedure && <p>{boltsWords(procedure.content.bolts)}</p>}
      <p>{text('table-not-checked')}</p>
      <span className={styles.actions}>
        <Button onClick={onDone}>{text('cancel')}</Button>
        <Button kind="primary" disabledReason={missing} onClick={() => setSigning(true)}>
          {text('approve-table', { count: format.count(covered.length) })}
        </Button>
      </span>
      {signing && (
        <DecisionDialog
          title={text('approve-table', { count: format.count(covered.length) })}
          meaning={text('table-meaning', { name: name.trim(), count: format.count(covered.length) })}
          roles={['engineer']}
          sendLabel={text('sign')}
          busy={approve.isPending}
          error={approve.error}
          onClose={() => setSigning(false)}
          onSend={({ signature }) => send(signature)}
        />
      )}
    </section>
  );
}
