import type { AreasAnswer, CountsByStage } from '@seatwell/contract';
import { dayOf } from '@seatwell/workflow';
import { loadPlaces, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { roleHolders } from '../reading/role-holders.ts';
import { noCounts, rollupOf, shutdownCounts, totalOf } from '../reading/stage-counts.ts';
import { waitCounts } from '../reading/waits-now.ts';
import { readinessByArea } from './readiness.ts';
import { signOffsGiven, signOffsOf } from './sign-offs.ts';

/** Joints of the shutdown that are in none of the counted things. */
export function outside(all: CountsByStage, counted: Iterable<CountsByStage>): CountsByStage {
  const rest = { ...all };
  for (const counts of counted) {
    for (const stage of Object.keys(rest) as (keyof CountsByStage)[]) rest[stage] -= counts[stage];
  }
  return rest;
}

/** Joints planned up to today, by area. */
export async function plannedByArea({
  db,
  siteId,
  shutdownId,
  shutdown,
  now,
}: Reading): Promise<Map<string | null, number>> {
  const { rows } = await db.query<{ areaId: string | null; planned: number }>({
    name: 'planned-by-area',
    text: `SELECT area_id AS "areaId", count(*) AS planned FROM joint
      WHERE site_id = $1 AND shutdown_id = $2 AND voided IS NULL AND planned_on <= $3::date GROUP BY area_id`,
    values: [siteId, shutdownId, dayOf(now, shutdown.timeZone)],
  });
  return new Map(rows.map((row) => [row.areaId, row.planned]));
}

/** The stages of every area in the order of their codes, and of the joints that are in none, where there are any. */
export async function stagesByArea(reading: Reading): Promise<{ areaId: string | null; stages: CountsByStage }[]> {
  const [places, rollup, all] = await Promise.all([
    loadPlaces(reading),
    rollupOf(reading, 'area'),
    shutdownCounts(reading),
  ]);
  const rest = outside(all, rollup.values());
  return [
    ...[...places.areas.keys()].map((areaId) => ({ areaId, stages: rollup.get(areaId) ?? noCounts() })),
    ...(totalOf(rest) > 0 ? [{ areaId: null, stages: rest }] : []),
  ];
}

/** `GET /areas`: progress, sign-offs and people side by side. */
export async function areas(reading: Reading): Promise<AreasAnswer> {
  const places = await loadPlaces(reading);
  const [stages, planned, given, waits, holders, people] = await Promise.all([
    stagesByArea(reading),
    plannedByArea(reading),
    signOffsGiven(reading),
    waitCounts(reading),
    roleHolders(reading),
    readinessByArea(reading, places),
  ]);
  return {
    rows: stages.map(({ areaId, stages: counts }) => ({
      area: placeOf(places.areas, areaId),
      total: totalOf(counts),
      stages: counts,
      planned: planned.get(areaId) ?? 0,
      signOffs: signOffsOf(areaId, given.get(areaId), waits, holders),
      people: people(areaId),
    })),
  };
}
