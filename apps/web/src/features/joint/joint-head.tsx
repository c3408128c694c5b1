import type { JointPage, MakeAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useRuleWords } from '../../app/use-rule-words.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { StageWord } from '../../ui/drawing.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { flagDetail } from './flag-detail.ts';
import styles from './joint.module.css';
import { jointState } from './shown-make.ts';
import { usePersons } from './use-persons.ts';

/** Which joint it is, and where its make stands. */
export function JointHead({ page, make }: { page: JointPage; make: MakeAnswer | undefined }) {
  const text = useText('joint');
  const shutdownId = useShutdownId();
  const joint = jointState(page);
  const { whereabouts } = joint;
  const sub = [
    whereabouts.item,
    whereabouts.location,
    whereabouts.line && text('line-of', { line: whereabouts.line }),
    make?.packs.map((pack) => text('pack-of', { number: pack.number })).join(', '),
    text('criticality-of', { letter: joint.criticality }),
    ...(joint.foundAs ?? []).map((found) => text('found-as', { tag: found.tag })),
  ].filter(Boolean);
  return (
    <PageHeader
      over={<Link href={addresses.register(shutdownId)}>{text('register')}</Link>}
      title={joint.tag}
      sub={sub.join(' · ')}
      actions={make && <StageBlock page={page} make={make} />}
    />
  );
}

function StageBlock({ page, make }: { page: JointPage; make: MakeAnswer }) {
  const text = useText('joint');
  const trade = useTrade();
  const ruleWords = useRuleWords();
  const format = useFormat();
  const persons = usePersons(page);
  const several = page.makes.length > 1;
  const restart = make.restartFrom;
  const left =
    make.stage === 'part-tight' && restart
      ? [
          text('left-at-pass', { pass: format.count(restart.pass), of: format.count(restart.passCount) }),
          restart.lastBolt === null ? '' : text('left-after-bolt', { bolt: format.count(restart.lastBolt) }),
          restart.leftAt === null ? '' : format.dayTime(restart.leftAt),
          persons(restart.leftBy.map((person) => person.personId)),
        ]
          .filter(Boolean)
          .join(' · ')
      : undefined;
  return (
    <div className={styles.stageBlock}>
      <strong className={styles.stage}>
        <StageWord stage={make.stage} size={28}>
          {[
            trade.word('stage', make.stage),
            several ? text('make-number', { number: make.number }) : '',
            make.cancelled ? text('cancelled') : '',
          ]
            .filter(Boolean)
            .join(' · ')}
        </StageWord>
      </strong>
      {make.flags
        .filter((flag) => flag.code !== 'part-tight')
        .map((flag) => (
          <span key={`${flag.code} ${flag.detail}`} className={styles.flag} data-tone={toneOf(flag.code)}>
            {`${trade.word('flag', flag.code)}: ${flagDetail(flag, format.dayTime, ruleWords)}`}
          </span>
        ))}
      <span className={styles.soft}>
        {left ?? (make.waitsFor.code === 'nothing' ? text('waits-for-nothing') : waitsSentence(make, trade, text))}
      </span>
    </div>
  );
}

const danger = new Set(['leaking', 'on-hold', 'rejected', 'punch-A']);
const toneOf = (code: string) => (danger.has(code) ? 'stop' : 'attention');

function waitsSentence(
  make: MakeAnswer,
  trade: ReturnType<typeof useTrade>,
  text: ReturnType<typeof useText<'joint'>>,
): string {
  const what = trade.waitsFor(make.waitsFor);
  return make.waitsFor.by
    ? text('waits-for-by', { what, who: trade.word('role', make.waitsFor.by) })
    : text('waits-for', { what });
}
