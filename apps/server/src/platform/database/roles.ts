import pg from 'pg';

/** Names carry the database's name, since roles belong to the whole cluster. */
export const roleNames = (database: string) => ({
  owner: `${database}_owner`,
  app: `${database}_app`,
  reader: `${database}_reader`,
});

export interface PreparedRoles {
  /** the role that each connection of the app takes, or null where one role must do everything */
  readonly appRole: string | null;
  readonly warnings: readonly string[];
}

/**
 * Makes roles app and reader where the given role may, and grants them what they need: app inserts and selects
 * everywhere but neither updates nor deletes the record; reader only selects.
 * Run by the migrating role after the migrations.
 */
export async function prepareRoles(client: pg.ClientBase): Promise<PreparedRoles> {
  const { rows } = await client.query<{
    database: string;
    superuser: boolean;
    creates: boolean;
  }>(
    `SELECT current_database() AS database, r.rolsuper AS superuser, r.rolsuper OR r.rolcreaterole AS creates
     FROM pg_roles r WHERE r.rolname = current_user`,
  );
  const me = rows[0];
  if (!me) throw new Error('The database does not know the role that connected.');
  const warnings: string[] = [];
  const names = roleNames(me.database);
  const known = await client.query<{ name: string }>('SELECT rolname AS name FROM pg_roles WHERE rolname = ANY($1)', [
    [names.app, names.reader],
  ]);
  const present = new Set(known.rows.map((row) => row.name));
  if (!me.creates && !present.has(names.app)) {
    warnings.push(
      `The database role may not create roles, so one role does everything; the record stays append-only by trigger. Remedy: let an administrator create ${names.app} and ${names.reader} and grant them to this role.`,
    );
    return { appRole: null, warnings };
  }
  const quoted = pg.escapeIdentifier;
  for (const name of [names.app, names.reader]) {
    if (present.has(name)) continue;
    await client.query(`CREATE ROLE ${quoted(name)} NOLOGIN`);
  }
  if (me.creates) await client.query(`GRANT ${quoted(names.app)} TO CURRENT_USER`).catch(ignoreAlreadyMember);
  await client.query(`
    GRANT USAGE ON SCHEMA public TO ${quoted(names.app)}, ${quoted(names.reader)};
    GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO ${quoted(names.app)};
    GRANT USAGE ON ALL SEQUENCES IN SCHEMA public TO ${quoted(names.app)};
    REVOKE UPDATE, DELETE, TRUNCATE ON event, event_row, record_key FROM ${quoted(names.app)};
    REVOKE ALL ON _prisma_migrations FROM ${quoted(names.app)};
    GRANT SELECT ON _prisma_migrations TO ${quoted(names.app)};
    GRANT SELECT ON ALL TABLES IN SCHEMA public TO ${quoted(names.reader)};
    REVOKE ALL ON account, session FROM ${quoted(names.reader)};
  `);
  if (me.superuser) {
    warnings.push(
      'The database is reached with an all-powerful role. Remedy: give Seatwell a role that owns only its own database.',
    );
  }
  return { appRole: names.app, warnings };
}

function ignoreAlreadyMember(error: { code?: string }): void {
  if (error.code !== '42710') throw error;
}
