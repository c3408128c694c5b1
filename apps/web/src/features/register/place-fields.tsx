import { type ChoicesAnswer, CRITICALITIES, JOINT_KINDS } from '@seatwell/contract';
import { FileField, fileAddress } from '../../app/file-field.tsx';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { usualStack } from './joint-draft.ts';
import { type DraftProps, JointFieldGroup } from './joint-form.tsx';

/** Which joint it is, where it is, and from where it is looked at. */
export function PlaceFields({ draft, onChange, choices }: DraftProps & { choices: ChoicesAnswer }) {
  const text = useText('jointForm');
  const trade = useTrade();
  const { whereabouts } = draft;
  const at = (part: Partial<typeof whereabouts>) => onChange({ whereabouts: { ...whereabouts, ...part } });
  const systems = choices.systems.filter(
    (system) => whereabouts.areaId === '' || system.areaId === null || system.areaId === whereabouts.areaId,
  );
  return (
    <JointFieldGroup legend={text('place')}>
      <TextField label={text('tag')} value={draft.tag} onChange={(tag) => onChange({ tag })} />
      <Select
        label={text('kind')}
        value={draft.kind}
        onChange={(kind) =>
          onChange({ kind, clampedParts: usualStack(kind), gasketCount: kind === 'insert' ? undefined : 1 })
        }
        options={JOINT_KINDS.map((value) => ({ value, label: trade.word('kind', value) }))}
      />
      <Select
        label={text('criticality')}
        hint={text('criticality-hint')}
        value={draft.criticality}
        onChange={(criticality) => onChange({ criticality })}
        options={CRITICALITIES.map((value) => ({ value, label: value }))}
      />
      <Select
        label={text('area')}
        value={whereabouts.areaId}
        onChange={(areaId) => at({ areaId })}
        options={choices.areas.map((area) => ({ value: area.areaId, label: area.name, detail: area.code }))}
      />
      <Select
        label={text('system')}
        value={whereabouts.systemId}
        onChange={(systemId) => at({ systemId })}
        options={systems.map((system) => ({ value: system.systemId, label: system.code, detail: system.name }))}
      />
      <TextField label={text('line')} optional value={whereabouts.line} onChange={(line) => at({ line })} />
      <TextField
        label={text('location')}
        optional
        value={whereabouts.location}
        onChange={(location) => at({ location })}
      />
      <TextField label={text('drawing')} optional value={whereabouts.drawing} onChange={(drawing) => at({ drawing })} />
      <TextField label={text('item')} optional value={whereabouts.item} onChange={(item) => at({ item })} />
      <TextField
        label={text('viewed-from')}
        hint={text('viewed-from-hint')}
        value={whereabouts.viewedFrom}
        onChange={(viewedFrom) => at({ viewedFrom })}
      />
      <TextField
        label={text('bolt-1-at')}
        hint={text('bolt-1-at-hint')}
        value={whereabouts.bolt1At}
        onChange={(bolt1At) => at({ bolt1At })}
      />
      <FileField label={text('photo')} hint={text('photo-hint')} onStored={(hash) => hash && at({ photo: hash })} />
      {whereabouts.photo !== '' && (
        <span>
          <Link href={fileAddress(whereabouts.photo)} target="_blank">
            {text('photo-held')}
          </Link>{' '}
          <Button kind="quiet" onClick={() => at({ photo: '' })}>
            {text('photo-take-off')}
          </Button>
        </span>
      )}
    </JointFieldGroup>
  );
}
