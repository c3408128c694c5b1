import { useText } from '../../texts/text-provider.tsx';
import { Select } from '../../ui/select.tsx';
import styles from './import.module.css';
import type { ChoicesProps } from './preview-page.tsx';
import { useFieldNames } from './use-field-names.ts';
import { useImportSaid } from './use-import-said.ts';

/** What only a person can say, each thing once for all rows that wait for it. */
export function QuestionsSection({ preview, choices, onChange }: ChoicesProps) {
  const text = useText('import');
  const nameOf = useFieldNames();
  const said = useImportSaid();
  if (preview.questions.length === 0) return null;
  const answers = choices.options.answers ?? {};
  return (
    <section className={styles.section}>
      <h2>{text('questions', { count: preview.questions.length })}</h2>
      <div className={styles.grid}>
        {preview.questions.map((question) => (
          <Select
            key={question.key}
            label={said({ code: question.code, message: question.question }, question.field)}
            hint={[
              text('question-rows', {
                count: question.rows,
                field: nameOf(question.field),
                rows: question.firstRows.join(', '),
              }),
              question.lastAnswer !== undefined &&
                question.lastAnswer === answers[question.key] &&
                text('as-last-time'),
            ]
              .filter(Boolean)
              .join(' · ')}
            value={String(answers[question.key] ?? '')}
            options={question.choices.map((choice) => ({ value: String(choice.value), label: choice.label }))}
            onChange={(chosen) => {
              const choice = question.choices.find((each) => String(each.value) === chosen);
              if (!choice) return;
              const next = { ...answers, [question.key]: choice.value };
              onChange({ ...choices, options: { ...choices.options, answers: next } });
            }}
          />
        ))}
      </div>
    </section>
  );
}
