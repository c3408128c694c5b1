import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { toolsQuery } from '../../app/reads.ts';
import { siteInstant } from '../../app/site-time.ts';
import { useCurrentShutdown } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { boltsIn } from '../tightening/pass-steps.ts';
import { KIND_OF_METHOD } from '../tightening/tool-fit.ts';
import { usePlan } from '../tightening/use-plan.ts';
import { FactProblem } from './fact-problem.tsx';
import type { Job } from './job.ts';
import type { FromPaper } from './paper-form.tsx';
import {
  passPayload,
  relaxationPayload,
  roundPayload,
  SET_QUANTITY,
  settingOf,
  type WrittenPass,
} from './paper-pass.ts';
import { PeopleField } from './people-field.tsx';
import { useFact } from './use-fact.ts';
import styles from './work.module.css';

type Outcome = WrittenPass['outcome'];

/** A pass, final round or relaxation pass that was written on paper: entered as it stands there. */
export function PaperPassTask({ job, from, onDone }: { job: Job; from: FromPaper; onDone: () => void }) {
  const text = useText('work');
  const format = useFormat();
  const timeZone = useCurrentShutdown()?.timeZone ?? 'UTC';
  const { data: tools } = useSuspenseQuery(toolsQuery);
  const plan = usePlan(job);
  const subject = { ...job.joint, makeId: job.make.makeId };
  const facts = {
    pass: useFact('pass-recorded', subject, onDone),
    round: useFact('final-round-recorded', subject, onDone),
    relaxation: useFact('relaxation-pass-recorded', subject, onDone),
  };
  const method = job.make.procedure?.content.method ?? 'torque-wrench';
  const quantity = SET_QUANTITY[method];
  const [started, setStarted] = useState('');
  const [shown, setShown] = useState<number | undefined>();
  const [chosen, setChosen] = useState({ toolId: '', pumpId: '', gaugeId: '' });
  const [outcome, setOutcome] = useState<Outcome>('finished');
  const [lastBolt, setLastBolt] = useState<number | undefined>();
  const [boltsDone, setBoltsDone] = useState<number | undefined>();
  const [why, setWhy] = useState('');
  const [rounds, setRounds] = useState<number | undefined>(1);
  const [moved, setMoved] = useState(false);
  const [nutsMoved, setNutsMoved] = useState<number | undefined>(0);
  const [by, setBy] = useState<readonly string[]>(job.people.slice(0, 1).map((each) => each.personId));

  const restart = job.make.restartFrom;
  const kind = restart === null ? 'relaxation' : restart.finalRound ? 'round' : 'pass';
  const fact = facts[kind];
  const pass = restart?.pass ?? 1;
  const steps = plan.plan?.passes[pass - 1]?.steps ?? [];
  const hydraulic = method === 'hydraulic-wrench' || method === 'tensioner';
  const left = kind === 'pass' && outcome === 'interrupted';

  let missing: string | undefined;
  if (started === '') missing = text('missing-start');
  else if (shown === undefined || shown <= 0) missing = text('missing-set');
  else if (chosen.toolId === '' || (hydraulic && (chosen.pumpId === '' || chosen.gaugeId === '')))
    missing = text('missing-tools');
  else if (by.length === 0) missing = text('missing-people');
  else if (left && (boltsDone === undefined || why.trim() === '')) missing = text('missing-left');
  else if (kind === 'round' && rounds === undefined) missing = text('missing-rounds');
  else if (kind === 'relaxation' && nutsMoved === undefined) missing = text('missing-nuts');
  else if (kind === 'pass' && plan.refusal !== null) missing = plan.refusal;

  const record = () => {
    if (shown === undefined) return;
    const asEntered = { value: shown, unit: format.unit(quantity) };
    const written: WrittenPass = {
      startedAt: new Date(siteInstant(started, timeZone)),
      endedAt: from.at,
      set: settingOf(quantity, format.toHeld(quantity, shown), asEntered),
      ...chosen,
      outcome,
      lastBolt,
      boltsDone,
      why,
    };
    const options = { performedBy: by };
    if (kind === 'pass') facts.pass.record(passPayload(written, pass, boltsIn(steps)), options);
    else if (kind === 'round') facts.round.record(roundPayload(written, rounds ?? 1, moved), options);
    else facts.relaxation.record(relaxationPayload(written, nutsMoved ?? 0), options);
  };
  const toolsOf = (wanted: string) =>
    tools.rows.filter((tool) => tool.kind === wanted).map((tool) => ({ value: tool.toolId, label: tool.tag }));
  const choice = (name: keyof typeof chosen, wanted: string, label: string) => (
    <Select
      label={label}
      value={chosen[name]}
      options={toolsOf(wanted)}
      onChange={(toolId) => setChosen({ ...chosen, [name]: toolId })}
    />
  );
  return (
    <div className={styles.form}>
      <h3>{text(`paper-${kind}`, { pass: format.count(pass) })}</h3>
      <DateField label={text('paper-start')} kind="datetime-local" value={started} onChange={setStarted} />
      <p className={styles.soft}>{text('paper-end-is')}</p>
      <NumberField label={text('paper-set')} unit={format.unit(quantity)} least={0} value={shown} onChange={setShown} />
      {choice('toolId', KIND_OF_METHOD[method], text('paper-tool'))}
      {hydraulic && choice('pumpId', 'pump', text('paper-pump'))}
      {hydraulic && choice('gaugeId', 'pressure-gauge', text('paper-gauge'))}
      {kind === 'pass' && (
        <RadioCards
          label={text('paper-outcome')}
          value={outcome}
          options={[
            { value: 'finished', label: text('paper-finished') },
            { value: 'interrupted', label: text('paper-left') },
          ]}
          onChange={setOutcome}
        />
      )}
      {left && (
        <>
          <NumberField label={text('paper-last-bolt')} optional decimals={0} value={lastBolt} onChange={setLastBolt} />
          <NumberField label={text('paper-bolts-done')} decimals={0} value={boltsDone} onChange={setBoltsDone} />
          <TextField label={text('reason')} lines={2} value={why} onChange={setWhy} />
        </>
      )}
      {kind === 'round' && (
        <>
          <NumberField label={text('paper-rounds')} least={1} decimals={0} value={rounds} onChange={setRounds} />
          <Checkbox label={text('paper-moved')} checked={moved} onChange={setMoved} />
        </>
      )}
      {kind === 'relaxation' && (
        <NumberField label={text('paper-nuts')} least={0} decimals={0} value={nutsMoved} onChange={setNutsMoved} />
      )}
      <PeopleField label={text('who-did')} people={job.people} chosen={by} onChange={setBy} />
      <FactProblem error={fact.error} busy={fact.busy} onKeepForReview={fact.keepForReview} />
      <StickyActionBar
        actions={
          <Button kind="primary" size="large" wide busy={fact.busy} disabledReason={missing} onClick={record}>
            {text('paper-record')}
          </Button>
        }
      />
    </div>
  );
}
