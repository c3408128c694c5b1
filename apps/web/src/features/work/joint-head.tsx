import type { ReactNode } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { StageWord } from '../../ui/drawing.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import type { Job } from './job.ts';
import styles from './work.module.css';

/** Which joint this is, where it is, and from where it is looked at: at the head of every task. */
export function JointHead({ job, task, actions }: { job: Job; task: string; actions?: ReactNode }) {
  const text = useText('work');
  const trade = useTrade();
  const { joint, make } = job;
  const { flange } = joint.specification;
  const { whereabouts } = joint;
  const facts = [
    trade.flange(flange.size, flange.rating),
    trade.bolts(joint.bolting?.count ?? null, joint.bolting?.thread ?? null),
    trade.word('facing', flange.facing),
    whereabouts.location,
    whereabouts.line,
  ].filter(Boolean);
  // The stage says part tight already.
  const flags = make.flags.filter((flag) => flag.code !== 'part-tight');
  const seen = [
    whereabouts.viewedFrom === null
      ? text('viewing-side-missing')
      : text('viewed-from', { side: whereabouts.viewedFrom }),
    whereabouts.bolt1At === null ? text('bolt-1-missing') : text('bolt-1-at', { place: whereabouts.bolt1At }),
  ];
  return (
    <PageHeader
      title={joint.tag}
      documentTitle={`${joint.tag} · ${task}`}
      over={
        <>
          <Link href={addresses.myJoints(job.shutdownId)}>{text('to-my-joints')}</Link>
          {' · '}
          <Link href={addresses.joint(job.shutdownId, joint.jointId)}>{text('to-joint')}</Link>
        </>
      }
      sub={
        <>
          {facts.join(' · ')}
          <br />
          {seen.join(' · ')}
          <br />
          <span className={styles.sub}>
            <StageWord stage={make.stage}>{trade.word('stage', make.stage)}</StageWord>
            <span>{flags.map((flag) => trade.word('flag', flag.code)).join(', ')}</span>
          </span>
        </>
      }
      actions={actions}
    />
  );
}
