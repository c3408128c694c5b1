import type { ShutdownSettings } from '@seatwell/contract';
import type { ShiftDefinition } from '@seatwell/workflow';
import type { Database, Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

export interface ShutdownRow {
  readonly siteId: string;
  readonly shutdownId: string;
  readonly name: string;
  readonly timeZone: string;
  readonly startsOn: string;
  readonly endsOn: string;
  readonly units: 'SI' | 'US';
  readonly areaBasis: 'tensile' | 'root';
  readonly shifts: readonly ShiftDefinition[];
  readonly settings: ShutdownSettings;
}

const COLUMNS = `site_id AS "siteId", shutdown_id AS "shutdownId", name, time_zone AS "timeZone", starts_on AS "startsOn",
  ends_on AS "endsOn", units, area_basis AS "areaBasis", shifts, settings`;

/** @throws Problem `not-found` when the site has no such shutdown: another site's id is as unknown as any */
export async function loadShutdown(
  db: Database | Transaction,
  siteId: string,
  shutdownId: string,
): Promise<ShutdownRow> {
  const { rows } = await db.query<ShutdownRow>({
    name: 'load-shutdown',
    text: `SELECT ${COLUMNS} FROM shutdown WHERE site_id = $1 AND shutdown_id = $2`,
    values: [siteId, shutdownId],
  });
  const shutdown = rows[0];
  if (!shutdown) throw new Problem('not-found', `This site has no shutdown ${shutdownId}.`);
  return shutdown;
}

export async function listShutdowns(db: Database, siteId: string): Promise<ShutdownRow[]> {
  const { rows } = await db.query<ShutdownRow>(
    `SELECT ${COLUMNS} FROM shutdown WHERE site_id = $1 ORDER BY starts_on DESC, shutdown_id`,
    [siteId],
  );
  return rows;
}
