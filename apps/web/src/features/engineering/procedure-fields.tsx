import {
  COVERAGES,
  GASKET_FAMILIES_KNOWN,
  JOINT_KINDS,
  type LubricantsAnswer,
  PATTERNS,
  type ProcedureContent,
  TIGHTENING_METHODS,
  WORK_SCOPES,
} from '@seatwell/contract';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { FieldGroup } from '../../ui/field-group.tsx';
import { Link } from '../../ui/link.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { BoltsFields } from './bolts-fields.tsx';
import styles from './engineering.module.css';
import { PolicyFields } from './policy-fields.tsx';
import { readPercents } from './procedure-draft.ts';
import { TickList } from './tick-list.tsx';

interface Props {
  readonly value: ProcedureContent;
  readonly onChange: (value: ProcedureContent) => void;
  readonly lubricants: LubricantsAnswer['rows'];
}

/** All that a procedure settles. */
export function ProcedureFields({ value, onChange, lubricants }: Props) {
  const text = useText('engineering');
  const trade = useTrade();
  const format = useFormat();
  const [percents, setPercents] = useState(value.passPercents.join(' '));
  const [cautions, setCautions] = useState(value.cautions.join('\n'));
  const set = (part: Partial<ProcedureContent>) => onChange({ ...value, ...part });
  const { appliesTo } = value;
  const applies = (part: Partial<typeof appliesTo>) => set({ appliesTo: { ...appliesTo, ...part } });
  return (
    <>
      <FieldGroup legend={text('how')}>
        <div className={styles.pair}>
          <Select
            label={text('pattern')}
            value={value.pattern}
            onChange={(pattern) => set({ pattern })}
            options={PATTERNS.map((each) => ({ value: each, label: trade.word('pattern', each) }))}
          />
          <Select
            label={text('method')}
            value={value.method}
            onChange={(method) => {
              const { coverage: _other, ...rest } = value;
              onChange({ ...rest, method });
            }}
            options={TIGHTENING_METHODS.map((each) => ({ value: each, label: trade.word('method', each) }))}
          />
          {value.method === 'tensioner' && (
            <Select
              label={text('coverage')}
              hint={text('coverage-hint')}
              value={value.coverage ? String(value.coverage) : ''}
              onChange={(chosen) => {
                const coverage = COVERAGES.find((each) => String(each) === chosen);
                if (coverage !== undefined) set({ coverage });
              }}
              options={COVERAGES.map((each) => ({
                value: String(each),
                label: text('coverage-of', {
                  percent: format.percent(each),
                  groups: format.count(Math.round(1 / each)),
                }),
              }))}
            />
          )}
          <NumberField
            label={text('tools-at-once')}
            least={1}
            most={16}
            decimals={0}
            value={value.tools}
            onChange={(tools) => tools !== undefined && set({ tools })}
          />
          <NumberField
            label={text('group')}
            optional
            least={1}
            most={8}
            decimals={0}
            hint={text('group-hint')}
            value={value.group ?? undefined}
            onChange={(group) => set({ group: group ?? null })}
          />
          <TextField
            label={text('pass-percents')}
            hint={text('pass-percents-hint')}
            error={readPercents(percents) ? undefined : text('pass-percents-bad')}
            value={percents}
            onChange={(typed) => {
              setPercents(typed);
              const read = readPercents(typed);
              if (read) set({ passPercents: read });
            }}
          />
          <Select
            label={text('lubricant')}
            value={value.lubricantId}
            onChange={(lubricantId) => set({ lubricantId })}
            options={lubricants.map((row) => ({
              value: row.dataId,
              label: row.name,
              detail: text('nut-factor-of', {
                factor: format.number(row.content.nutFactor, 2),
                source: row.content.source,
              }),
            }))}
          />
        </div>
        {lubricants.length === 0 && (
          <p>
            <Link href={addresses.data({ part: 'lubricants' })}>{text('no-lubricant')}</Link>
          </p>
        )}
        <RadioCards
          label={text('numbering')}
          value={value.numbering}
          onChange={(numbering) => set({ numbering })}
          options={(['clockwise', 'order'] as const).map((each) => ({
            value: each,
            label: text(`numbering-${each}`),
            detail: text(`numbering-${each}-detail`),
          }))}
        />
        <Checkbox
          label={text('final-round')}
          detail={text('final-round-detail')}
          checked={value.finalRound}
          onChange={(finalRound) => set({ finalRound })}
        />
        <Checkbox
          label={text('relaxation-pass')}
          detail={text('relaxation-pass-detail')}
          checked={value.relaxationPass}
          onChange={(relaxationPass) => set({ relaxationPass })}
        />
      </FieldGroup>
      <BoltsFields
        value={value.bolts}
        onChange={(bolts) => {
          const { bolts: _old, ...rest } = value;
          onChange(bolts ? { ...rest, bolts } : rest);
        }}
      />
      <FieldGroup legend={text('applies-to')}>
        <div className={styles.pair}>
          <NumberField
            label={text('least-bolts')}
            least={3}
            decimals={0}
            value={appliesTo.leastBolts}
            onChange={(leastBolts) => leastBolts !== undefined && applies({ leastBolts })}
          />
          <NumberField
            label={text('most-bolts')}
            most={400}
            decimals={0}
            value={appliesTo.mostBolts}
            onChange={(mostBolts) => mostBolts !== undefined && applies({ mostBolts })}
          />
          <TextField
            label={text('ratings')}
            optional
            hint={text('ratings-hint')}
            value={appliesTo.ratings.join(', ')}
            onChange={(typed) =>
              applies({
                ratings: typed
                  .split(',')
                  .map((part) => part.trim())
                  .filter(Boolean),
              })
            }
          />
        </div>
        <TickList
          label={text('kinds')}
          options={JOINT_KINDS}
          word={(each) => trade.word('kind', each)}
          value={appliesTo.kinds}
          onChange={(kinds) => applies({ kinds })}
        />
        <TickList
          label={text('families')}
          options={GASKET_FAMILIES_KNOWN}
          word={(each) => trade.word('family', each)}
          value={appliesTo.gasketFamilies}
          onChange={(families) => applies({ gasketFamilies: families })}
        />
        <TickList
          label={text('work-scopes')}
          options={WORK_SCOPES}
          word={(each) => trade.word('scope', each)}
          value={appliesTo.workScopes ?? []}
          onChange={(scopes) => {
            const { workScopes: _old, ...rest } = appliesTo;
            set({ appliesTo: scopes.length === 0 ? rest : { ...rest, workScopes: scopes } });
          }}
        />
      </FieldGroup>
      <PolicyFields value={value.policy} onChange={(policy) => set({ policy })} />
      <TextField
        label={text('cautions')}
        optional
        lines={4}
        hint={text('cautions-hint')}
        value={cautions}
        onChange={(typed) => {
          setCautions(typed);
          set({
            cautions: typed
              .split('\n')
              .map((each) => each.trim())
              .filter(Boolean),
          });
        }}
      />
    </>
  );
}
