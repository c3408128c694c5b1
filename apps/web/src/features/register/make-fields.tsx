import { type ChoicesAnswer, MAKE_PURPOSES, PROOF_WAYS, WORK_SCOPES } from '@seatwell/contract';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { Select } from '../../ui/select.tsx';
import { type DraftProps, JointFieldGroup } from './joint-form.tsx';

/** The first make of a new joint. */
export function MakeFields({ draft, onChange, choices }: DraftProps & { choices: ChoicesAnswer }) {
  const text = useText('jointForm');
  const trade = useTrade();
  return (
    <JointFieldGroup legend={text('make')}>
      <Select
        label={text('purpose')}
        value={draft.purpose}
        onChange={(purpose) => onChange({ purpose })}
        options={MAKE_PURPOSES.map((value) => ({ value, label: trade.word('purpose', value) }))}
      />
      <Select
        label={text('work-scope')}
        value={draft.workScope}
        onChange={(workScope) => onChange({ workScope })}
        options={WORK_SCOPES.map((value) => ({ value, label: trade.word('scope', value) }))}
      />
      <Select
        label={text('proof')}
        value={draft.proof}
        onChange={(proof) => onChange({ proof })}
        options={PROOF_WAYS.map((value) => ({ value, label: trade.word('proof', value) }))}
      />
      <DateField
        label={text('planned-on')}
        optional
        value={draft.plannedOn}
        onChange={(plannedOn) => onChange({ plannedOn })}
      />
      <Select
        label={text('crew')}
        optional
        value={draft.crewId}
        onChange={(crewId) => onChange({ crewId })}
        options={choices.crews.map((crew) => ({ value: crew.crewId, label: crew.code, detail: crew.company }))}
      />
      <Select
        label={text('pack')}
        optional
        value={draft.packId}
        onChange={(packId) => onChange({ packId })}
        options={choices.packs.map((pack) => ({ value: pack.packId, label: pack.number }))}
      />
    </JointFieldGroup>
  );
}
