import { requireAllowed } from '../../platform/access/allows.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { requireNamedIn } from '../joints/require-named.ts';
import type { Decisions } from '../recording/decision.ts';
import { insertOrRefuse } from '../recording/insert-or-refuse.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';

/** The pre-job talk: who attended which revision of which procedure. */
export const talkDecisions: Decisions<'talk-held'> = {
  'talk-held': async (input) => {
    const { siteId, shutdownId } = shutdownOf(input);
    const { talkId, procedureId, revision, crewId, heldBy, attendees } = input.payload;
    requireAllowed(input.actor, 'hold-talk', { shutdownId, crewId });
    await requireNamedIn(input);
    const { rows } = await input.tx.query<{ approved_at: Date | null }>(
      'SELECT approved_at FROM procedure_revision WHERE site_id = $1 AND procedure_id = $2 AND revision = $3',
      [siteId, procedureId, revision],
    );
    if (!rows[0]?.approved_at) {
      throw new Problem(
        'bad-input',
        `Revision ${revision} of this procedure is not approved, so no talk can be held on it.`,
        [
          {
            path: 'payload.revision',
            code: 'not-approved',
            message: 'Let the joint engineer approve the revision first.',
          },
        ],
      );
    }
    const people = attendees.map((attendee) => attendee.personId);
    const known = await input.tx.query('SELECT person_id FROM person WHERE site_id = $1 AND person_id = ANY($2)', [
      siteId,
      [...people, heldBy],
    ]);
    if (known.rowCount !== new Set([...people, heldBy]).size) {
      throw new Problem('bad-input', 'Somebody on the attendance list is not registered at this site.', [
        { path: 'payload.attendees', code: 'unknown-person', message: 'Register the person first.' },
      ]);
    }
    await insertOrRefuse(input.tx, 'talk', {
      site_id: siteId,
      shutdown_id: shutdownId,
      talk_id: talkId,
      procedure_id: procedureId,
      revision,
      crew_id: crewId,
      held_by: heldBy,
      held_at: input.workTime,
      attendees: people,
    });
    return {};
  },
};
