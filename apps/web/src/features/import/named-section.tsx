import type { ImportPreview, NamedThing } from '@seatwell/contract';
import { useState } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './import.module.css';
import type { ChoicesProps } from './preview-page.tsx';

const KINDS = ['areas', 'systems', 'crews', 'packs'] as const;
type Kind = keyof ImportPreview['named'];

const CREATE = 'create';

/** Areas, systems, crews and packs that the file names and the shutdown lacks: created, or meant as one there is. */
export function NamedSection(props: ChoicesProps) {
  const text = useText('import');
  const { preview, choices, onChange } = props;
  const isOpen = (kind: Kind, thing: NamedThing) => thing.id === null || Object.hasOwn(choices.meant[kind], thing.name);
  const open = KINDS.filter((kind) => preview.named[kind].some((thing) => isOpen(kind, thing)));
  if (open.length === 0) return null;
  const lacksCompany = choices.newCrewCompany !== null || preview.named.crews.some((crew) => crew.missing);
  const lacksPressure = choices.newPacks.pressure_MPa !== null || preview.named.packs.some((pack) => pack.missing);
  return (
    <section className={styles.section}>
      <h2>{text('named')}</h2>
      <p className={styles.soft}>{text('named-sub')}</p>
      {(lacksCompany || lacksPressure) && (
        <div className={styles.grid}>
          {lacksCompany && (
            <TextField
              label={text('crew-company')}
              hint={text('crew-company-hint')}
              value={choices.newCrewCompany ?? ''}
              onChange={(company) => onChange({ ...choices, newCrewCompany: company.trim() === '' ? null : company })}
            />
          )}
          {lacksPressure && <PackPressure {...props} />}
        </div>
      )}
      {open.map((kind) => (
        <details key={kind} open={preview.named[kind].length <= 12}>
          <summary>
            {text(`named-${kind}`, { count: preview.named[kind].filter((thing) => isOpen(kind, thing)).length })}
          </summary>
          <div className={styles.grid}>
            {preview.named[kind]
              .filter((thing) => isOpen(kind, thing))
              .map((thing) => (
                <Select
                  key={thing.name}
                  label={thing.name}
                  hint={text('rows', { count: thing.rows })}
                  value={choices.meant[kind][thing.name] ?? CREATE}
                  options={[
                    { value: CREATE, label: text('create') },
                    ...preview.existing[kind].map(({ id, name }) => ({ value: id, label: text('means', { name }) })),
                  ]}
                  onChange={(chosen) => {
                    const { [thing.name]: _was, ...others } = choices.meant[kind];
                    const meant = chosen === CREATE ? others : { ...others, [thing.name]: chosen };
                    onChange({ ...choices, meant: { ...choices.meant, [kind]: meant } });
                  }}
                />
              ))}
          </div>
        </details>
      ))}
    </section>
  );
}

function PackPressure({ choices, onChange }: ChoicesProps) {
  const text = useText('import');
  const format = useFormat();
  const known = choices.newPacks.pressure_MPa;
  const [shown, setShown] = useState(known === null ? undefined : format.toShown('pressure', known));
  return (
    <NumberField
      label={text('pack-pressure')}
      hint={text('pack-pressure-hint')}
      unit={format.unit('pressure')}
      value={shown}
      onChange={(entered) => {
        setShown(entered);
        const pressure_MPa = entered !== undefined && entered > 0 ? format.toHeld('pressure', entered) : null;
        onChange({ ...choices, newPacks: { ...choices.newPacks, pressure_MPa } });
      }}
    />
  );
}
