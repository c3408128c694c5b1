import { alignmentLimits } from '@seatwell/workflow';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { GapFields } from './gap-fields.tsx';
import type { Job } from './job.ts';
import { type NipUpForm, nipUpPayload, toBeFitted } from './nip-up-form.ts';
import { useReading } from './numbers.ts';
import styles from './work.module.css';

export interface AlignmentFieldsProps {
  readonly form: NipUpForm;
  readonly job: Job;
  readonly onChange: (more: Partial<NipUpForm>) => void;
}

/** Alignment as it was before any force, each reading with its limit, and the gap at four points. */
export function AlignmentFields({ form, job, onChange }: AlignmentFieldsProps) {
  const text = useText('work');
  const gap = useReading('gap');
  const limits = limitsOf(job);
  const over = job.settings.alignment.qcBand_factor;
  const length = (key: 'parallelism' | 'offset' | 'rotation', limit: number) => (
    <NumberField
      label={text(`align-${key}`)}
      unit={gap.unit}
      hint={text('limit', { limit: gap.limit(limit) })}
      most={gap.shown(limit)}
      value={gap.shown(form[`${key}_mm`])}
      onChange={(shown) => onChange({ [`${key}_mm`]: gap.held(shown) })}
    />
  );
  return (
    <fieldset className={styles.card}>
      <legend className={styles.legend}>{text('alignment')}</legend>
      <p className={styles.soft}>{text('alignment-how')}</p>
      <div className={styles.pair}>
        {length('parallelism', limits.parallelism)}
        {length('offset', limits.offset)}
        {length('rotation', limits.rotation)}
        <NumberField
          label={text('align-pull-in')}
          unit="%"
          hint={text('limit', { limit: `${limits.pullIn} %` })}
          most={limits.pullIn}
          value={form.pullIn_percent}
          onChange={(pullIn_percent) => onChange({ pullIn_percent })}
        />
      </div>
      <p className={styles.soft}>{text('align-beyond', { factor: over })}</p>
      <GapFields values={form.gaps_mm} onChange={(gaps_mm) => onChange({ gaps_mm })} />
      <p className={styles.soft}>{text('limits-from', { source: job.settings.alignment.source })}</p>
    </fieldset>
  );
}

/** The limits as the rule of the record takes them: asked with the readings left out. */
function limitsOf(job: Job) {
  const wanted = toBeFitted(job.joint, job.state);
  const asked = nipUpPayload({ ...placeholder, family: wanted.family, purpose: wanted.purpose }, wanted, null);
  const found = alignmentLimits(asked, { joint: job.joint, make: job.state, settings: job.settings });
  const of = (what: string) => found.find((limit) => limit.what === what)?.limit ?? 0;
  return {
    parallelism: of('parallelism'),
    offset: of('offset'),
    rotation: of('rotation'),
    pullIn: of('force to pull it in'),
  };
}

const placeholder: NipUpForm = {
  family: '',
  size: '',
  rating: '',
  purpose: '',
  count: 0,
  batch: '',
  boltGrade: '',
  boltCount: 0,
  boltCondition: 'new',
  temporaryBolts: false,
  lubricant: 'other',
  otherLubricant: '',
  parallelism_mm: null,
  offset_mm: null,
  rotation_mm: null,
  pullIn_percent: undefined,
  gaps_mm: [],
  remark: '',
};
