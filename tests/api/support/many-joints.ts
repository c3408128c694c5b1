import pg from 'pg';

/** Copies of one listed joint with tags, sizes, stages and days of their own; only the projection is filled. */
export async function fillRegister(databaseUrl: string, jointId: string, joints: number): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  const { rows } = await client.query<{ name: string }>(
    `SELECT attname AS name FROM pg_attribute WHERE attrelid = 'joint'::regclass AND attnum > 0 AND NOT attisdropped ORDER BY attnum`,
  );
  const changed: Readonly<Record<string, string>> = {
    joint_id: 'gen_random_uuid()',
    tag: `'U' || (n % 40) || '-' || lpad(n::text, 7, '0')`,
    tag_key: `convert_to('U' || lpad((n % 40)::text, 10, '0') || '-' || lpad(n::text, 10, '0'), 'UTF8')`,
    search_text: `lower('U' || (n % 40) || '-' || lpad(n::text, 7, '0') || ' 8"-hc-' || (n % 900))`,
    size_rank: '(ARRAY[50, 75, 100, 150, 200, 300])[1 + n % 6]',
    stage: `(ARRAY['planned', 'engineered', 'released', 'open', 'tight', 'checked', 'proven'])[1 + n % 7]`,
    stage_rank: '(ARRAY[0, 1, 2, 3, 7, 8, 9])[1 + n % 7]',
    planned_on: `date '2027-03-01' + n % 28`,
  };
  const columns = rows.map(({ name }) => name);
  await client.query(
    `INSERT INTO joint (${columns.join(', ')}) SELECT ${columns.map((name) => changed[name] ?? `j.${name}`).join(', ')}
     FROM joint j, generate_series(1, ${joints - 1}) n WHERE j.joint_id = $1`,
    [jointId],
  );
  // The counts by stage that the register's total is read from.
  await client.query("DELETE FROM rollup WHERE dimension = 'shutdown'");
  await client.query(
    `INSERT INTO rollup (site_id, shutdown_id, dimension, key, stage, count)
     SELECT site_id, shutdown_id, 'shutdown', shutdown_id, stage, count(*) FROM joint GROUP BY site_id, shutdown_id, stage`,
  );
  await client.query('VACUUM ANALYZE joint');
  await client.end();
}
