import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';
import type { Job } from '../work/job.ts';
import type { Position, WaitingFact } from './draft.ts';

/** Who left the joint part tight, where and why, and where it starts again; who takes over sees it first. */
export function RestartNotice(props: { job: Job; position: Position; waiting: readonly WaitingFact[] }) {
  const { job, position, waiting } = props;
  const text = useText('tightening');
  const format = useFormat();
  const restart = job.make.restartFrom;
  if (!position.repeats) return null;
  if (waiting.length > 0 || !restart) {
    return (
      <Notice kind="stop" title={text('repeat-title', { pass: format.count(position.pass) })}>
        <p>{text('repeat-own')}</p>
      </Notice>
    );
  }
  const mine = restart.leftBy.some((each) =>
    job.people.some((person) => person.isMe && person.personId === each.personId),
  );
  return (
    <Notice kind="stop" title={text('repeat-title', { pass: format.count(position.pass) })}>
      <p>
        {text('left-by', {
          who: restart.leftBy.map((each) => each.name ?? text('name-erased')).join(', '),
          when: restart.leftAt === null ? '' : format.dayTime(restart.leftAt),
          bolts: format.count(restart.boltsDone),
        })}
        {restart.lastBolt !== null && ` ${text('last-bolt', { bolt: restart.lastBolt })}`}
      </p>
      {restart.why !== null && <p>{text('left-because', { why: restart.why })}</p>}
      {!mine && <p>{text('you-take-over')}</p>}
      <p>{text('repeat-why')}</p>
    </Notice>
  );
}
