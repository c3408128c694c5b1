import type { ImportDraft } from '@seatwell/contract';
import { REGISTER_FIELDS } from '@seatwell/workflow';
import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import styles from './import.module.css';
import type { ChoicesProps } from './preview-page.tsx';
import { useFieldNames } from './use-field-names.ts';
import { useImportSaid } from './use-import-said.ts';

const IGNORED = 'ignored';

/** How the sheet is read: sheet, header row, and what each column holds, with values beside it. */
export function ColumnsSection({ preview, choices, onChange, draft }: ChoicesProps & { draft: ImportDraft }) {
  const text = useText('import');
  const said = useImportSaid();
  const nameOf = useFieldNames();
  const mapping = choices.mapping ?? {};
  const fieldAt = (column: number) => Object.keys(mapping).find((field) => mapping[field] === column);
  const choose = (column: number, field: string) => {
    const others = Object.entries(mapping).filter(([known, at]) => known !== field && at !== column);
    const next = field === IGNORED ? others : [...others, [field, column] as const];
    onChange({ ...choices, mapping: Object.fromEntries(next) });
  };
  const options = [
    { value: IGNORED, label: text('column-ignored') },
    ...REGISTER_FIELDS.map((field) => ({ value: field as string, label: nameOf(field) })),
  ];
  return (
    <section className={styles.section}>
      <h2>{text('columns')}</h2>
      <p className={styles.soft}>{text(`mapped-${preview.mappedBy}`)}</p>
      <div className={styles.grid}>
        <Select
          label={text('sheet')}
          value={choices.sheet}
          options={draft.sheets.map(({ name }) => ({ value: name, label: name }))}
          onChange={(sheet) => onChange({ ...choices, sheet, headerRow: null, mapping: null })}
        />
        <Select
          label={text('header-row')}
          value={String(choices.headerRow ?? '')}
          options={preview.top.map(({ rowNumber, cells }) => ({
            value: String(rowNumber),
            label: String(rowNumber),
            detail: cells.filter(Boolean).slice(0, 4).join(' · '),
          }))}
          onChange={(row) => onChange({ ...choices, headerRow: Number(row), mapping: null })}
        />
      </div>
      {choices.mapping === null ? (
        <p>{text('columns-after-reading')}</p>
      ) : (
        <div className={styles.grid}>
          {preview.columns.map(({ column, letter, header, samples, understoodAs }) => (
            <Select
              key={column}
              label={text('column-label', { letter, header })}
              hint={[samples.join(' · '), understoodAs && text('understood-as', { how: understoodAs })]
                .filter(Boolean)
                .join('; ')}
              value={fieldAt(column) ?? IGNORED}
              options={options}
              onChange={(field) => choose(column, field)}
            />
          ))}
        </div>
      )}
      {preview.notes.length > 0 && (
        <details>
          <summary>{text('cell-notes', { count: preview.notes.length })}</summary>
          <ul className={styles.plainList}>
            {preview.notes.map((note) => (
              <li key={`${note.cells} ${note.code}`}>
                <strong>{note.cells}</strong> {said(note)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
