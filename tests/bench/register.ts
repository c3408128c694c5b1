import pg from 'pg';
import { fillRegister } from '../api/support/many-joints.ts';
import { listJoint } from '../api/support/shutdown.ts';
import { openBenchShutdown, send } from './support/bench-shutdown.ts';
import { percentile, rounded } from './support/statistics.ts';

const JOINTS = 200_000;
const ROUNDS = 40;

/** Questions that a coordinator asks of the register, and the bare statement that answers each. */
const QUESTIONS: readonly {
  readonly name: string;
  readonly query: string;
  readonly where: string;
  readonly order: string;
}[] = [
  { name: 'first page by tag', query: 'sort=tag', where: 'true', order: 'tag_key, joint_id' },
  { name: 'one stage by tag', query: 'stage=tight&sort=tag', where: "stage = 'tight'", order: 'tag_key, joint_id' },
  { name: 'by planned day', query: 'sort=planned', where: 'true', order: 'planned_on, tag_key, joint_id' },
  {
    name: 'by size, falling',
    query: 'sort=size&descending=true',
    where: 'true',
    order: 'size_rank DESC, tag_key DESC, joint_id DESC',
  },
  { name: 'search a tag', query: 'search=u7-0123', where: "search_text LIKE '%u7-0123%'", order: 'tag_key, joint_id' },
];

/** Filter, sort and page of a register of 200,000 joints over the API, beside the bare SQL of the same rows. */
export async function bench(): Promise<object> {
  const plant = await openBenchShutdown();
  const { shutdown, url, cookie, databaseUrl } = plant;
  const first = await listJoint(shutdown, { tag: 'U0-0000000' });
  const pool = new pg.Pool({ connectionString: databaseUrl, max: 4 });
  await fillRegister(databaseUrl, first.jointId, JOINTS);
  const answers: Record<string, unknown> = {};
  const all: number[] = [];
  const floor: number[] = [];
  for (const { name, query, where, order } of QUESTIONS) {
    const address = `${url}/api/v1/shutdowns/${shutdown.shutdownId}/joints?${query}&limit=100`;
    const times: number[] = [];
    const bare: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      const start = performance.now();
      await send(address, cookie, 'GET');
      times.push(performance.now() - start);
      const begin = performance.now();
      await pool.query(
        `SELECT * FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND ${where} ORDER BY ${order} LIMIT 100`,
        [await siteOf(pool), shutdown.shutdownId],
      );
      bare.push(performance.now() - begin);
    }
    all.push(...times);
    floor.push(...bare);
    answers[name] = { p95_ms: rounded(percentile(times, 0.95)), bare_p95_ms: rounded(percentile(bare, 0.95)) };
  }
  await pool.end();
  await plant.close();
  return {
    joints: JOINTS,
    p95_ms: rounded(percentile(all, 0.95)),
    bare_p95_ms: rounded(percentile(floor, 0.95)),
    ratio_p95: rounded(percentile(all, 0.95) / percentile(floor, 0.95)),
    questions: answers,
  };
}

let site: string | undefined;
async function siteOf(pool: pg.Pool): Promise<string> {
  site ??= (await pool.query<{ site_id: string }>('SELECT site_id FROM site')).rows[0]?.site_id;
  return site ?? '';
}
