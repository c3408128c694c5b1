import type { HistoryEntry, JointPage, MakeAnswer, Stage } from '@seatwell/contract';
import { useState } from 'react';
import { fileAddress } from '../../app/file-field.tsx';
import { useRuleWords } from '../../app/use-rule-words.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { StageGlyph } from '../../ui/drawing.tsx';
import { Link } from '../../ui/link.tsx';
import { AmendDialog } from './amend-dialog.tsx';
import { type Amendment, amendmentsOf } from './amendments.ts';
import styles from './joint.module.css';
import { ruleSentences } from './rule-sentences.ts';
import { useEventSentence } from './use-event-sentence.ts';
import { usePersons } from './use-persons.ts';

const shownAtFirst = 12;

/** Everything that happened, the newest first; what was corrected or revoked stays, struck through. */
export function JointHistory({ page, make }: { page: JointPage; make: MakeAnswer | undefined }) {
  const text = useText('joint');
  const [all, setAll] = useState(false);
  const [amending, setAmending] = useState<{ entry: HistoryEntry; amendment: Amendment } | null>(null);
  const entries = page.history.filter((entry) => !make || entry.makeId === null || entry.makeId === make.makeId);
  const shown = all ? entries : entries.slice(0, shownAtFirst);
  return (
    <section className={styles.block} aria-labelledby="history">
      <h2 id="history">{text('history')}</h2>
      <ol className={styles.history}>
        {shown.map((entry) => (
          <Entry
            key={entry.eventId}
            page={page}
            make={make}
            entry={entry}
            onAmend={(amendment) => setAmending({ entry, amendment })}
          />
        ))}
      </ol>
      {entries.length > shown.length && (
        <span>
          <Button kind="quiet" onClick={() => setAll(true)}>
            {text('whole-history', { count: entries.length })}
          </Button>
        </span>
      )}
      {amending && <AmendDialog page={page} make={make} {...amending} onClose={() => setAmending(null)} />}
    </section>
  );
}

interface EntryProps {
  readonly page: JointPage;
  readonly make: MakeAnswer | undefined;
  readonly entry: HistoryEntry;
  readonly onAmend: (amendment: Amendment) => void;
}

function Entry({ page, make, entry, onAmend }: EntryProps) {
  const text = useText('joint');
  const format = useFormat();
  const sentence = useEventSentence();
  const persons = usePersons(page);
  const trade = useTrade();
  const ruleWords = useRuleWords();
  const stage = stageOfEvent(entry);
  const gone = entry.amendedBy.some((each) => each.type === 'corrected' || each.type === 'revoked');
  const recorder = entry.recordedBy === null ? [] : [entry.recordedBy.personId];
  const by = persons(entry.performedBy.length > 0 ? entry.performedBy.map((each) => each.personId) : recorder);
  return (
    <li className={styles.entry} data-gone={gone ? '' : undefined}>
      <span aria-hidden="true">{stage && <StageGlyph stage={stage} />}</span>
      <time className={styles.time} dateTime={entry.workTime}>
        {format.dayTime(entry.workTime)}
      </time>
      <div>
        <span className={styles.said}>{sentence(entry)}</span>
        <div className={styles.who}>
          {by}
          {entry.signed && (
            <>
              {entry.signed.person.name !== null &&
                !by.includes(entry.signed.person.name) &&
                ` · ${entry.signed.person.name}`}
              {`, ${trade.word('role', entry.signed.role)} `}
              <span className={styles.signed} title={entry.signed.meaning}>
                {text('signed')}
              </span>
            </>
          )}
        </div>
        {entry.paperForm && (
          <div className={styles.who}>
            {text('from-paper')}{' '}
            <Link href={fileAddress(entry.paperForm)} target="_blank">
              {text('paper-form')}
            </Link>
          </div>
        )}
        {gone && (
          <div className={styles.who}>
            {text(entry.amendedBy[0]?.type === 'revoked' ? 'was-revoked' : 'was-corrected')}
          </div>
        )}
        {entry.waitsForReview && (
          <div className={styles.stop}>{text('in-review', { rules: ruleSentences(ruleWords, entry.reviewCodes) })}</div>
        )}
        <span className={styles.entryActions}>
          {amendmentsOf(entry, make).map((amendment) => (
            <Button key={amendment} kind="quiet" onClick={() => onAmend(amendment)}>
              {text(`amend-${amendment}`)}
            </Button>
          ))}
        </span>
      </div>
    </li>
  );
}

const stageOf: Readonly<Record<string, Stage>> = {
  'joint-listed': 'planned',
  'joint-found': 'planned',
  'target-approved': 'engineered',
  'break-released': 'released',
  opened: 'open',
  'faces-inspected': 'faces-accepted',
  'nipped-up': 'nipped-up',
  'pass-recorded': 'part-tight',
  'stud-replaced': 'part-tight',
  'final-round-recorded': 'tight',
  'leak-found': 'tight',
  checked: 'checked',
  proven: 'proven',
  'hand-over-offered': 'proven',
  'handed-over': 'handed-over',
};

function stageOfEvent({ type, data }: HistoryEntry): Stage | undefined {
  if (type === 'faces-inspected' && data.accepted === false) return 'open';
  if (type === 'checked' && data.outcome === 'rejected') return 'tight';
  if (type === 'final-round-recorded' && data.nutMoved === true) return 'part-tight';
  if (type === 'loosened') return data.extent === 'all' ? 'nipped-up' : 'part-tight';
  return stageOf[type];
}
