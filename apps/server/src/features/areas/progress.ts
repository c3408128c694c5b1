import type { CountsByStage, ProgressAnswer } from '@seatwell/contract';
import { loadPlaces } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { noCounts, rollupOf, shutdownCounts, totalOf } from '../reading/stage-counts.ts';
import { outside } from './queries.ts';

interface Named {
  readonly id: string;
  readonly code: string;
  readonly name: string | null;
}

async function named(reading: Reading, by: ProgressAnswer['by']): Promise<Named[]> {
  if (by === 'pack') {
    const { rows } = await reading.db.query<Named>({
      name: 'progress-packs',
      text: `SELECT pack_id AS id, number AS code, NULL AS name FROM test_pack WHERE site_id = $1 AND shutdown_id = $2
        ORDER BY number_key`,
      values: [reading.siteId, reading.shutdownId],
    });
    return rows;
  }
  const places = await loadPlaces(reading);
  if (by === 'crew')
    return [...places.crews.values()].map(({ crewId, code, company }) => ({ id: crewId, code, name: company }));
  if (by === 'system')
    return [...places.systems.values()].map(({ systemId, code, name }) => ({ id: systemId, code, name }));
  return [...places.areas.values()].map(({ areaId, code, name }) => ({ id: areaId, code, name }));
}

/** Crews are assigned and reassigned by the hundred, so their counts are read, not kept. */
async function stagesByCrew({ db, siteId, shutdownId }: Reading): Promise<Map<string, CountsByStage>> {
  const { rows } = await db.query<{ crewId: string; stage: keyof CountsByStage; count: number }>({
    name: 'stages-by-crew',
    text: `SELECT crew_id AS "crewId", stage, count(*) AS count FROM joint
      WHERE site_id = $1 AND shutdown_id = $2 AND voided IS NULL AND crew_id IS NOT NULL GROUP BY crew_id, stage`,
    values: [siteId, shutdownId],
  });
  const counts = new Map<string, CountsByStage>();
  for (const row of rows) {
    const known = counts.get(row.crewId) ?? noCounts();
    known[row.stage] = row.count;
    counts.set(row.crewId, known);
  }
  return counts;
}

/** `GET /progress`: joints by stage of each area, system, pack or crew. */
export async function progress(reading: Reading, by: ProgressAnswer['by']): Promise<ProgressAnswer> {
  const [things, counts, all] = await Promise.all([
    named(reading, by),
    by === 'crew' ? stagesByCrew(reading) : rollupOf(reading, by),
    shutdownCounts(reading),
  ]);
  const rows = things.map(({ id, code, name }) => {
    const stages = counts.get(id) ?? noCounts();
    return { id, code, name, total: totalOf(stages), stages };
  });
  // A joint may be in several packs, so what is in none cannot be had by taking away.
  if (by === 'pack') return { by, rows };
  const rest = outside(all, counts.values());
  const none = { id: null, code: null, name: null, total: totalOf(rest), stages: rest };
  return { by, rows: none.total > 0 ? [...rows, none] : rows };
}
