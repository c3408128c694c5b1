import { createContext, type ReactNode, use, useMemo, useState } from 'react';
import { siteInstant, siteMinute } from '../../app/site-time.ts';
import { useCurrentShutdown } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { PhotoField } from './photo-field.tsx';
import { usePhotos } from './use-photos.ts';
import styles from './work.module.css';

/** What the form says of the fact that is entered from it. */
export interface FromPaper {
  readonly at: Date;
  readonly paperForm: string;
}

const PaperContext = createContext<FromPaper | null>(null);

/** When the work was done and the photo of its form, where it was written on paper first; null where it was not. */
export const useFromPaper = (): FromPaper | null => use(PaperContext);

/** Above a task: the work was written down where there was no power, and is entered now. */
export function PaperForm({ possible, now, children }: { possible: boolean; now: string; children: ReactNode }) {
  const text = useText('work');
  const timeZone = useCurrentShutdown()?.timeZone ?? 'UTC';
  const [onPaper, setOnPaper] = useState(false);
  const [time, setTime] = useState('');
  const photos = usePhotos();
  const { hash } = photos;
  const from = useMemo(
    () => (onPaper && time !== '' && hash ? { at: new Date(siteInstant(time, timeZone)), paperForm: hash } : null),
    [onPaper, time, timeZone, hash],
  );
  const waits = onPaper && from === null;
  return (
    <>
      {possible && <Checkbox label={text('from-paper')} checked={onPaper} onChange={setOnPaper} />}
      {onPaper && (
        <fieldset className={styles.group}>
          <legend className={styles.legend}>{text('from-paper')}</legend>
          <p>{text('from-paper-how')}</p>
          <DateField
            label={text('paper-time')}
            hint={text('paper-time-hint')}
            kind="datetime-local"
            latest={siteMinute(new Date(now), timeZone)}
            value={time}
            onChange={setTime}
          />
          <PhotoField label={text('paper-photo')} photos={photos} />
        </fieldset>
      )}
      {waits && <p role="status">{text(photos.sending ? 'photo-on-its-way' : 'paper-first')}</p>}
      {/* Nothing is recorded as of now by mistake while time or photo are missing. */}
      <div inert={waits} className={styles.task}>
        <PaperContext value={from}>{children}</PaperContext>
      </div>
    </>
  );
}
