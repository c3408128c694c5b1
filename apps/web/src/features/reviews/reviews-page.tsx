import type { ReviewsAnswer } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { reviewsQuery } from '../../app/reads.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useRuleWords } from '../../app/use-rule-words.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import reviewTexts from '../../texts/en/reviews.json';
import { useText } from '../../texts/text-provider.tsx';
import type { TextKey } from '../../texts/translate.ts';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './reviews.module.css';
import { SettleDialog } from './settle-dialog.tsx';

/** Facts that were kept although a rule failed: nobody has settled them yet. */
export function ReviewsPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('reviews');
  const format = useFormat();
  const ruleWords = useRuleWords();
  const shutdownId = useShutdownId();
  const { data } = useSuspenseQuery(reviewsQuery(shutdownId));
  const [settling, setSettling] = useState<ReviewsAnswer['rows'][number] | null>(null);
  const eventWord = (type: string) => {
    const key = `event-${type}`;
    return Object.hasOwn(reviewTexts, key) ? text(key as TextKey<'reviews'>) : type.replaceAll('-', ' ');
  };
  const name = (person: { name: string | null }) => person.name ?? text('name-erased');
  return (
    <>
      <PageHeader
        over={<Link href={addresses.today(shutdownId)}>{text('today')}</Link>}
        title={text('title', { count: data.rows.length, shown: format.count(data.rows.length) })}
        documentTitle={text('reviews')}
        sub={text('sub')}
      />
      <Table
        caption={text('reviews')}
        captionHidden
        rows={data.rows}
        rowKey={(row) => row.eventId}
        empty={text('none')}
        columns={[
          {
            key: 'joint',
            header: text('on'),
            rowHeader: true,
            cell: (row) =>
              row.joint ? (
                <Link href={addresses.joint(shutdownId, row.joint.jointId, { review: row.eventId })}>
                  {row.joint.tag}
                </Link>
              ) : (
                row.pack && <Link href={addresses.pack(shutdownId, row.pack.packId)}>{row.pack.number}</Link>
              ),
          },
          { key: 'what', header: text('record'), cell: (row) => eventWord(row.type) },
          { key: 'when', header: text('work-time'), cell: (row) => format.dayTime(row.workTime) },
          {
            key: 'by',
            header: text('by'),
            cell: (row) =>
              (row.performedBy.length > 0 ? row.performedBy : row.recordedBy ? [row.recordedBy] : [])
                .map(name)
                .join(', '),
          },
          {
            key: 'rules',
            header: text('failed'),
            cell: (row) => (
              <ul className={styles.rules}>
                {row.rules.map((rule) => (
                  <li key={rule.code}>
                    {ruleWords(rule.code)?.sentence ?? rule.sentence}
                    <span className={styles.soft}>{ruleWords(rule.code)?.remedy ?? rule.remedy}</span>
                  </li>
                ))}
                {row.behind !== null && <li className={styles.soft}>{text('behind')}</li>}
              </ul>
            ),
          },
          {
            key: 'settle',
            header: text('settle-column'),
            // What was done on a joint is settled beside its history; a reading of a pack is settled here.
            cell: (row) =>
              row.pack && (
                <Button disabledReason={reasonAgainst(row.actions, 'review-settled')} onClick={() => setSettling(row)}>
                  {text('settle')}
                </Button>
              ),
          },
        ]}
      />
      {settling?.pack && (
        <SettleDialog
          subject={{ subjectId: settling.pack.packId, makeId: null, version: null }}
          eventId={settling.eventId}
          what={eventWord(settling.type)}
          rules={settling.rules.map((rule) => ruleWords(rule.code)?.sentence ?? rule.sentence).join(' ')}
          onClose={() => setSettling(null)}
        />
      )}
    </>
  );
}
