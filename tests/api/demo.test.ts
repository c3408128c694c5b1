import { STAGES } from '@seatwell/contract';
import { foldHistory, type JointState } from '@seatwell/workflow';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jointHistory } from '../../apps/server/src/features/joints/joint-store.ts';
import { createPool, type Database } from '../../apps/server/src/platform/database/pool.ts';
import { prepareRoles } from '../../apps/server/src/platform/database/roles.ts';
import { openDemo } from '../../prisma/demo/open-demo.ts';
import { createTestDatabase, type TestDatabase } from './support/database.ts';

let database: TestDatabase;
let db: Database;
let accounts: Awaited<ReturnType<typeof openDemo>>;

beforeAll(async () => {
  database = await createTestDatabase();
  const owner = new pg.Client({ connectionString: database.url });
  await owner.connect();
  const { appRole } = await prepareRoles(owner);
  await owner.end();
  db = createPool(database.url, { size: 4, role: appRole ?? undefined, durable: false });
  accounts = await openDemo(db, () => {});
}, 300_000);

afterAll(async () => {
  await db.end();
  await database.drop();
});

const count = async (sql: string): Promise<number> =>
  (await db.query<{ n: number }>(`SELECT count(*) AS n FROM ${sql}`)).rows[0]?.n ?? 0;

describe('the demo', () => {
  it('is as large as a shutdown that is worth looking at', async () => {
    expect(await count('joint')).toBeGreaterThanOrEqual(600);
    expect(await count('area')).toBeGreaterThanOrEqual(3);
    expect(await count('system')).toBeGreaterThanOrEqual(10);
    expect(await count('test_pack')).toBeGreaterThanOrEqual(12);
    expect(await count('person')).toBeGreaterThanOrEqual(40);
    expect(await count('calibration')).toBeGreaterThanOrEqual(10);
    expect(await count('talk')).toBeGreaterThanOrEqual(6);
    expect(await count('punch_item WHERE closed_at IS NULL')).toBeGreaterThanOrEqual(5);
  });

  it('shows every stage but those that pass within minutes, and part tight joints left by their crews', async () => {
    const { rows } = await db.query<{ stage: string }>('SELECT DISTINCT stage FROM joint');
    const shown = new Set(rows.map((row) => row.stage));
    expect(STAGES.filter((stage) => !shown.has(stage) && !['faces-accepted', 'nipped-up'].includes(stage))).toEqual([]);
    expect(await count("joint WHERE stage = 'part-tight'")).toBeGreaterThanOrEqual(3);
    expect(await count("joint WHERE 'leaking' = ANY(flags)")).toBe(1);
    expect(await count("joint WHERE 'needs-review' = ANY(flags)")).toBe(1);
  });

  it('has every kind of joint, insert joints with two gaskets, and spaded joints with a final make', async () => {
    const { rows } = await db.query<{ kind: string }>('SELECT DISTINCT kind FROM joint');
    expect(rows.map((row) => row.kind).sort()).toEqual(
      [
        'clamp-connector',
        'compact-flange',
        'flange-pair',
        'girth',
        'insert',
        'isolation-kit',
        'lined',
        'machine-nozzle',
        'manway',
        'ring-joint',
      ].sort(),
    );
    expect(
      await count("joint WHERE kind = 'insert' AND state #>> '{specification,gasket,count}' = '2'"),
    ).toBeGreaterThan(5);
    expect(await count('joint WHERE make_count = 2')).toBeGreaterThan(5);
  });

  it('has joints with computed loads: to be tightened, left in the middle of a pass by their crew, and tight', async () => {
    const { rows } = await db.query<{ stage: string; passes: number; recorded: number }>(
      `SELECT stage, jsonb_array_length(make #> '{target,tightening,passes}') AS passes,
         jsonb_array_length(make -> 'passes') AS recorded
       FROM joint, jsonb_array_elements(state -> 'makes') AS make
       WHERE make #>> '{target,tightening,way}' = 'computed-loads'`,
    );
    const stages = new Set(rows.map(({ stage }) => stage));
    expect(rows.length).toBeGreaterThanOrEqual(10);
    for (const stage of ['released', 'open', 'part-tight', 'checked']) expect(stages).toContain(stage);
    for (const { stage, passes, recorded } of rows) if (stage === 'checked') expect(recorded).toBe(passes);
  });

  it('has an account for every role', () => {
    const roles = new Set(accounts.map((account) => account.role));
    for (const role of [
      'administrator',
      'coordinator',
      'engineer',
      'inspector',
      'operations',
      'store',
      'witness',
      'management',
      'chargehand',
      'technician',
    ]) {
      expect(roles).toContain(role);
    }
  });

  it('is the fold of its record, joint by joint', async () => {
    const { rows } = await db.query<{ site_id: string; shutdown_id: string; joint_id: string; state: JointState }>(
      'SELECT site_id, shutdown_id, joint_id, state FROM joint ORDER BY joint_id',
    );
    const differing: string[] = [];
    for (const row of rows) {
      const folded = foldHistory(await jointHistory(db, row.site_id, row.shutdown_id, row.joint_id));
      if (JSON.stringify(sorted(folded)) !== JSON.stringify(sorted(row.state))) differing.push(row.state.tag);
    }
    expect(differing).toEqual([]);
  });

  it('is kept by a second start', async () => {
    const before = await count('event');
    const again = await openDemo(db, () => {});
    expect(again).toEqual(accounts);
    expect(await count('event')).toBe(before);
  });
});

/** The same value with its keys in one order: jsonb keeps another than the fold. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, each]) => [key, sorted(each)]),
  );
}
