import { uuidv7 } from 'uuidv7';
import { siteIsSetUp } from '../../apps/server/src/features/session/set-up-site.ts';
import type { Database } from '../../apps/server/src/platform/database/pool.ts';
import { StartupError } from '../../apps/server/src/platform/startup-error.ts';
import { loadDemo } from './load-demo.ts';
import { DEMO_SECRET, type DemoAccount } from './people-and-tools.ts';

const LOADING = 'load-demo';

interface LoadingRow {
  readonly state: 'running' | 'done';
}

/**
 * Loads the demo into an empty database, once: a second start keeps what was done since.
 * @returns the demo's accounts; none where the database holds a site of somebody's own
 * @throws StartupError when an earlier loading was cut off, with what to do
 */
export async function openDemo(db: Database, say: (line: string) => void): Promise<readonly DemoAccount[]> {
  const { rows } = await db.query<LoadingRow>('SELECT state FROM job WHERE kind = $1', [LOADING]);
  const loading = rows[0];
  if (loading?.state === 'running') {
    throw new StartupError(
      'An earlier start was stopped while it loaded the demo. Delete the data folder (.seatwell) and start the demo again; it holds nothing but the unfinished demo.',
    );
  }
  if (loading) return demoAccounts(db);
  if (await siteIsSetUp(db)) {
    say('This database holds a site already: the demo is not loaded over it.');
    return [];
  }
  const jobId = uuidv7();
  await db.query(
    `INSERT INTO job (site_id, job_id, kind, state, input, started_by, created_at) VALUES ($1, $1, $2, 'running', '{}', $1, now())`,
    [jobId, LOADING],
  );
  let shown = -1;
  await loadDemo(db, new Date(), (share) => {
    const tenth = Math.floor(share * 10);
    if (tenth === shown) return;
    shown = tenth;
    say(`Loading the demo shutdown: ${tenth * 10} %`);
  });
  await db.query("UPDATE job SET state = 'done', ended_at = now() WHERE job_id = $1", [jobId]);
  return demoAccounts(db);
}

async function demoAccounts(db: Database): Promise<DemoAccount[]> {
  const { rows } = await db.query<{ role: string; name: string; email: string }>(
    `SELECT g.role, p.name, a.email FROM role_grant g
     JOIN account a ON a.site_id = g.site_id AND a.account_id = g.account_id AND a.closed_at IS NULL
     JOIN person p ON p.site_id = a.site_id AND p.person_id = a.person_id
     WHERE g.ended_at IS NULL AND a.email LIKE '%@northmere.example'
     ORDER BY array_position(ARRAY['administrator', 'coordinator', 'engineer', 'inspector', 'operations', 'store', 'witness',
       'management', 'chargehand', 'technician'], g.role), p.name`,
  );
  return rows.map((row) => ({ ...row, password: DEMO_SECRET }));
}
