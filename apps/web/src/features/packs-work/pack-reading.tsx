import type { PackPage } from '@seatwell/contract';
import { useRef, useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { newId } from '../../app/send-command.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { Notice } from '../../ui/notice.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from '../signing/signing.module.css';
import { FactProblem } from '../work/fact-problem.tsx';
import { useReading } from '../work/numbers.ts';
import { isClosed, type PackMember, underPressure } from './not-closed.ts';

interface Kept {
  readonly content: string;
  readonly eventId: string;
  readonly readAt: string;
}

/** One reading of the test: pressure, time held, and what each joint did. */
export function PackReading({ pack, onRecorded }: { pack: PackPage; onRecorded: () => void }) {
  const text = useText('testing');
  const format = useFormat();
  const pressure = useReading('pressure');
  const temperature = useReading('temperature');
  const reading = useFactCommand('test-reading');
  const leak = useFactCommand('leak-found');
  const [read_MPa, setRead] = useState<number | null>(null);
  const [shownPressure, setShownPressure] = useState<number | undefined>();
  const [metal_C, setMetal] = useState<number | null>(null);
  const [held, setHeld] = useState<number | undefined>();
  const [outcome, setOutcome] = useState<'dry' | 'leaks' | 'not-looked' | ''>('');
  const [leaking, setLeaking] = useState<ReadonlySet<string>>(new Set());
  const [where, setWhere] = useState('');
  // Where a leak is refused after its reading was recorded, pressing again means that same reading.
  const kept = useRef<Kept | null>(null);
  const punchIds = useRef(new Map<string, string>());
  const told = useRef(new Set<string>());
  // What is not closed gets no result: nobody can call it dry.
  const members = underPressure(pack).filter(isClosed);
  const leaks = members.filter((member) => leaking.has(member.makeId));

  let missing: string | undefined;
  if (read_MPa === null || held === undefined) missing = text('missing-reading');
  else if (members.length === 0 && outcome !== 'not-looked') missing = text('nothing-closed');
  else if (outcome === '') missing = text('missing-result');
  else if (outcome === 'leaks' && leaks.length === 0) missing = text('missing-leaks');
  else if (outcome === 'leaks' && where.trim() === '') missing = text('missing-leak-words');

  const resultOf = (member: PackMember) =>
    outcome === 'leaks' && leaking.has(member.makeId) ? ('leak' as const) : ('no-leak' as const);
  const record = async () => {
    if (read_MPa === null || held === undefined) return;
    const said = {
      pressure_MPa: read_MPa,
      pressureAsEntered: { value: shownPressure ?? 0, unit: pressure.unit },
      metalTemperature_C: metal_C,
      gaugeIds: pack.released?.gaugeIds ?? [],
      held_min: held,
      results:
        outcome === 'not-looked'
          ? []
          : members.map((member) => ({ jointId: member.jointId, makeId: member.makeId, result: resultOf(member) })),
    };
    const content = JSON.stringify(said);
    if (kept.current?.content !== content)
      kept.current = { content, eventId: newId(), readAt: new Date().toISOString() };
    const { eventId, readAt } = kept.current;
    await reading.mutateAsync({ eventId, subjectId: pack.packId, label: pack.number, payload: { readAt, ...said } });
    for (const member of outcome === 'leaks' ? leaks : []) {
      if (told.current.has(member.makeId)) continue;
      const punchId = punchIds.current.get(member.makeId) ?? newId();
      punchIds.current.set(member.makeId, punchId);
      await leak.mutateAsync({
        subjectId: member.jointId,
        label: member.tag,
        makeId: member.makeId,
        payload: {
          when: 'test',
          where: null,
          underPressure: read_MPa > 0,
          packId: pack.packId,
          punchId,
          remark: where.trim(),
        },
      });
      told.current.add(member.makeId);
    }
    onRecorded();
  };
  return (
    <section className={styles.group} aria-label={text('reading')}>
      <h2>{text('reading')}</h2>
      {pack.readings.length > 0 && (
        <ul>
          {pack.readings.map((each) => (
            <li key={each.readAt}>
              {text(each.holds ? 'reading-holds' : 'reading-short', {
                when: format.dayTime(each.readAt),
                pressure: format.quantity('pressure', each.pressure_MPa),
                held: format.duration(each.held_min),
              })}
            </li>
          ))}
        </ul>
      )}
      <div className={styles.fields}>
        <NumberField
          label={text('pressure-read')}
          unit={pressure.unit}
          hint={text('test-pressure', { pressure: pressure.limit(pack.pressure_MPa) })}
          value={pressure.shown(read_MPa)}
          onChange={(shown) => {
            setShownPressure(shown);
            setRead(pressure.held(shown));
          }}
        />
        <NumberField
          label={text('held')}
          unit="min"
          hint={text('hold-time', { hold: format.duration(pack.hold_min) })}
          least={0}
          value={held}
          onChange={setHeld}
        />
        <NumberField
          label={text('metal-temperature')}
          unit={temperature.unit}
          optional
          value={temperature.shown(metal_C)}
          onChange={(shown) => setMetal(temperature.held(shown))}
        />
      </div>
      <RadioCards
        label={text('result')}
        value={outcome}
        options={[
          { value: 'dry' as const, label: text('all-dry', { count: members.length }), detail: text('all-dry-detail') },
          { value: 'leaks' as const, label: text('some-leak'), detail: text('some-leak-detail') },
          { value: 'not-looked' as const, label: text('not-looked'), detail: text('not-looked-detail') },
        ]}
        onChange={setOutcome}
      />
      {outcome === 'leaks' && (
        <>
          <ul className={styles.list}>
            {members.map((member) => (
              <li key={member.makeId}>
                <Checkbox
                  label={member.tag}
                  checked={leaking.has(member.makeId)}
                  onChange={(on) =>
                    setLeaking(
                      new Set(on ? [...leaking, member.makeId] : [...leaking].filter((id) => id !== member.makeId)),
                    )
                  }
                />
              </li>
            ))}
          </ul>
          <TextField label={text('leak-words')} lines={2} value={where} onChange={setWhere} />
          <Notice kind="attention">{text('leak-means')}</Notice>
        </>
      )}
      <FactProblem error={reading.error} />
      <ErrorNotice error={leak.error} />
      <Button
        kind="primary"
        size="large"
        busy={reading.isPending || leak.isPending}
        disabledReason={missing}
        onClick={() => void record().catch(() => undefined)}
      >
        {text('record-reading')}
      </Button>
    </section>
  );
}
