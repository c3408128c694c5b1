import type { JointPage, MakeAnswer } from '@seatwell/contract';
import type { ReactNode } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useRuleWords } from '../../app/use-rule-words.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { StageWord } from '../../ui/drawing.tsx';
import { Link } from '../../ui/link.tsx';
import styles from './joint.module.css';
import { ruleSentences } from './rule-sentences.ts';
import { jointState } from './shown-make.ts';

/** What stands beside the work: other makes, punch items, permits, packs, accepted deviations. */
export function JointSides({ page, make }: { page: JointPage; make: MakeAnswer }) {
  const text = useText('joint');
  const trade = useTrade();
  const ruleWords = useRuleWords();
  const format = useFormat();
  const shutdownId = useShutdownId();
  const others = page.makes.filter((other) => other.makeId !== make.makeId);
  const deviations = jointState(page).makes.find((each) => each.makeId === make.makeId)?.deviations ?? [];
  return (
    <div className={styles.sides}>
      <Side title={text('other-makes')} empty={text('no-other-make')}>
        {others.map((other) => (
          <li key={other.makeId}>
            <Link href={addresses.joint(shutdownId, page.joint.jointId, { make: other.makeId })}>
              {text('make-of', { number: other.number, purpose: trade.word('purpose', other.purpose) })}
            </Link>
            <StageWord stage={other.stage}>
              {other.cancelled ? text('cancelled') : trade.word('stage', other.stage)}
            </StageWord>
          </li>
        ))}
      </Side>
      <Side title={text('punch-items')} empty={text('no-punch')}>
        {page.punchItems.map((item) => (
          <li key={item.punchId}>
            <span>
              <strong className={item.category === 'A' && item.closedAt === null ? styles.stop : undefined}>
                {item.category}
              </strong>{' '}
              {item.text}
            </span>
            <span className={styles.who}>
              {item.closedAt === null
                ? [item.owner, text('open-since', { at: format.dayTime(item.raisedAt) })].filter(Boolean).join(' · ')
                : text('closed-how', { how: item.closedHow ?? '', at: format.dayTime(item.closedAt) })}
            </span>
          </li>
        ))}
      </Side>
      <Side title={text('permits')} empty={text('no-permit')}>
        {page.permits.map((permit) => (
          <li key={permit.permitId}>
            <strong>{permit.number}</strong>
            <span className={styles.who}>
              {[
                permit.isolationReference,
                text(permit.inForce ? 'in-force-until' : 'not-in-force', { at: format.dayTime(permit.validUntil) }),
              ]
                .filter(Boolean)
                .join(' · ')}
            </span>
          </li>
        ))}
      </Side>
      <Side title={text('packs')} empty={text('no-pack')}>
        {make.packs.map((pack) => (
          <li key={pack.packId}>
            <Link href={addresses.pack(shutdownId, pack.packId)}>{pack.number}</Link>
            <span className={styles.who}>
              {[text(`in-pack-${pack.role}`), text(pack.released ? 'pack-released' : 'pack-not-released')].join(' · ')}
            </span>
          </li>
        ))}
      </Side>
      {page.items.length > 0 && (
        <Side title={text('items')} empty="">
          {page.items.map((item) => (
            <li key={item.itemId}>
              <strong>{item.tag}</strong>
              <span className={styles.who}>
                {[trade.word('item', item.kind), trade.word('whereabouts', item.whereabouts)].join(' · ')}
              </span>
            </li>
          ))}
        </Side>
      )}
      {deviations.length > 0 && (
        <Side title={text('deviations')} empty="">
          {deviations.map((deviation) => (
            <li key={deviation.eventId}>
              <strong>{ruleSentences(ruleWords, [deviation.rule])}</strong>
              <span>{deviation.reason}</span>
            </li>
          ))}
        </Side>
      )}
    </div>
  );
}

function Side({ title, empty, children }: { title: string; empty: string; children: readonly ReactNode[] }) {
  return (
    <section className={styles.block}>
      <h2>{title}</h2>
      {children.length === 0 ? <p className={styles.soft}>{empty}</p> : <ul className={styles.list}>{children}</ul>}
    </section>
  );
}
