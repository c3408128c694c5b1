import type { Database, Transaction } from '../../platform/database/pool.ts';
import { Problem, type ProblemItem } from '../../platform/errors/problem.ts';
import { jointHistory } from '../joints/joint-store.ts';

const NAMED = 20;

interface Moved {
  readonly tag: string;
  readonly joint_id: string;
  readonly seen: number | null;
  readonly version: number;
}

/** Joints of the plan that are not as the preview saw them: listed by somebody else, or changed since. */
async function movedJoints(
  db: Database | Transaction,
  siteId: string,
  shutdownId: string,
  importId: string,
): Promise<Moved[]> {
  const { rows } = await db.query<Moved>(
    `SELECT j.tag, j.joint_id, r.version AS seen, j.version FROM import_row r
       JOIN joint j ON j.site_id = r.site_id AND j.shutdown_id = $2 AND j.tag = r.tag
       WHERE r.site_id = $1 AND r.import_id = $3 AND r.outcome = 'new'
     UNION ALL
     SELECT j.tag, j.joint_id, r.version AS seen, j.version FROM import_row r
       JOIN joint j ON j.site_id = r.site_id AND j.shutdown_id = $2 AND j.joint_id = r.joint_id
       WHERE r.site_id = $1 AND r.import_id = $3 AND r.outcome = 'changed' AND j.version <> r.version
     ORDER BY 1`,
    [siteId, shutdownId, importId],
  );
  return rows;
}

async function whatHappened(
  db: Database | Transaction,
  siteId: string,
  shutdownId: string,
  { joint_id, tag, seen, version }: Moved,
): Promise<ProblemItem> {
  if (seen === null) {
    return { path: tag, code: 'listed-since', message: `${tag} was listed since the preview.`, joint: tag };
  }
  const history = await jointHistory(db, siteId, shutdownId, joint_id);
  const types = [...new Set(history.slice(seen).map((event) => event.type))].join(', ');
  return {
    path: tag,
    code: 'changed-since',
    message: `${tag} is at version ${version}, the preview saw ${seen}; recorded since: ${types}.`,
    joint: tag,
  };
}

/** @throws Problem `stale-decision` naming the joints that moved since the preview, and what was recorded on them */
export async function refuseStaleImport(
  db: Database | Transaction,
  siteId: string,
  shutdownId: string,
  importId: string,
): Promise<void> {
  const moved = await movedJoints(db, siteId, shutdownId, importId);
  if (moved.length === 0) return;
  const items: ProblemItem[] = [];
  for (const joint of moved.slice(0, NAMED)) items.push(await whatHappened(db, siteId, shutdownId, joint));
  throw new Problem(
    'stale-decision',
    `${moved.length === 1 ? 'One joint has' : `${moved.length} joints have`} changed since the preview. Nothing was recorded. Look at the preview again, then confirm that.`,
    items,
  );
}
