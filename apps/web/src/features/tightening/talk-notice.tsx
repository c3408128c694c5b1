import type { TalksAnswer } from '@seatwell/contract';
import { useQuery } from '@tanstack/react-query';
import { shutdownRead } from '../../app/reads.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Notice } from '../../ui/notice.tsx';
import { fieldAddresses } from '../work/addresses.ts';
import type { Job } from '../work/job.ts';

/** Says before the first bolt, and not after the last one, that somebody has not heard the pre-job talk. */
export function TalkNotice({ job, persons }: { job: Job; persons: readonly string[] }) {
  const text = useText('tightening');
  const { data } = useQuery(shutdownRead<TalksAnswer>(job.shutdownId, '/talks'));
  const { procedure } = job.make;
  if (!data || !procedure) return null;
  const heard = new Set(
    data.rows
      .filter((talk) => talk.procedureId === procedure.procedureId && talk.revision === procedure.revision)
      .flatMap((talk) => talk.attendees.map((each) => each.personId)),
  );
  const missing = job.people.filter((each) => persons.includes(each.personId) && !heard.has(each.personId));
  if (missing.length === 0) return null;
  return (
    <Notice kind="attention" title={text('talk-missing', { code: procedure.code, revision: procedure.revision })}>
      <p>{text('talk-missing-who', { who: missing.map((each) => each.name).join(', ') })}</p>
      <p>
        <Link href={fieldAddresses.talk(job.shutdownId, procedure.procedureId)}>{text('hold-talk')}</Link>
      </p>
    </Notice>
  );
}
