import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { RadioCards } from '../../ui/radio-cards.tsx';
import { Select } from '../../ui/select.tsx';
import { depthLimit, type FaceDemands, type FaceForm, isOverLimit, type limitsFor } from './face-check.ts';
import { useReading } from './numbers.ts';
import styles from './work.module.css';

const conditions = ['clean', 'light-marks', 'scored', 'corroded', 'damaged'] as const;

export interface FaceCardProps {
  readonly number: number;
  readonly count: number;
  readonly face: FaceForm;
  readonly demands: FaceDemands;
  readonly limits: ReturnType<typeof limitsFor>;
  readonly onChange: (face: FaceForm) => void;
}

/** One face of the stack: its condition, its readings with the limit beside, and the decision. */
export function FaceCard({ number, count, face, demands, limits, onChange }: FaceCardProps) {
  const text = useText('work');
  const format = useFormat();
  const gap = useReading('gap');
  const marked = face.condition !== '' && face.condition !== 'clean';
  const depth = depthLimit(limits, face);
  const change = (more: Partial<FaceForm>) => onChange({ ...face, ...more });
  return (
    <fieldset className={styles.card}>
      <legend className={styles.legend}>
        {text(number === 1 ? 'face-nearest' : 'face-number', { number, count: format.count(count) })}
      </legend>
      <Select
        label={text('condition')}
        value={face.condition}
        options={conditions.map((value) => ({ value, label: text(`condition-${value}`) }))}
        onChange={(condition) => change({ condition })}
      />
      <div className={styles.pair}>
        <NumberField
          label={text('flatness')}
          unit={gap.unit}
          optional={!demands.measured}
          hint={limits ? text('limit', { limit: gap.limit(limits.limits.flatness_mm) }) : text('limit-unknown')}
          most={limits ? gap.shown(limits.limits.flatness_mm) : undefined}
          value={gap.shown(face.flatness_mm)}
          onChange={(shown) => change({ flatness_mm: gap.held(shown) })}
        />
        {marked && (
          <>
            <NumberField
              label={text('imperfection-extent')}
              unit={gap.unit}
              optional={!demands.measured}
              hint={limits?.width_mm ? text('seating-width', { width: gap.limit(limits.width_mm) }) : undefined}
              value={gap.shown(face.extent_mm)}
              onChange={(shown) => change({ extent_mm: gap.held(shown) })}
            />
            <NumberField
              label={text('imperfection-depth')}
              unit={gap.unit}
              optional={!demands.measured}
              hint={depth === null ? text('depth-limit-needs') : text('limit', { limit: gap.limit(depth) })}
              most={depth === null ? undefined : gap.shown(depth)}
              value={gap.shown(face.depth_mm)}
              onChange={(shown) => change({ depth_mm: gap.held(shown) })}
            />
          </>
        )}
      </div>
      {demands.groove && (
        <Checkbox
          label={text('groove-touched')}
          detail={text('groove-why')}
          checked={face.grooveTouched}
          onChange={(grooveTouched) => change({ grooveTouched })}
        />
      )}
      {isOverLimit(limits, face) && <p className={styles.warn}>{text('face-over-limit')}</p>}
      <RadioCards
        label={text('face-decision')}
        value={face.accepted}
        options={[
          { value: 'yes' as const, label: text('accept-face') },
          { value: 'no' as const, label: text('reject-face') },
        ]}
        onChange={(accepted) => change({ accepted })}
      />
    </fieldset>
  );
}
