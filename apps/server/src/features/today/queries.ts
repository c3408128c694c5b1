import type { TodayAnswer } from '@seatwell/contract';
import { dayOf, type ShiftAt, shiftAt } from '@seatwell/workflow';
import { plannedByArea, stagesByArea } from '../areas/queries.ts';
import { packSummaries } from '../packs/queries.ts';
import { daysBetween } from '../reading/days.ts';
import { loadPlaces, type Places, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { roleHolders } from '../reading/role-holders.ts';
import { reached, shutdownCounts, totalOf } from '../reading/stage-counts.ts';
import { planAndActual } from './curve.ts';
import { lapsesInShift } from './lapses.ts';
import { lastShiftByArea } from './last-shift.ts';
import { partTightRows } from './part-tight.ts';
import { waitingSignOffs } from './sign-offs.ts';
import { stillIn } from './still-in.ts';

const NEXT_PACKS = 8;

async function nextPacks(reading: Reading): Promise<TodayAnswer['packs']> {
  const packs = await packSummaries(reading);
  const rows = packs
    .filter((pack) => pack.state !== 'proven')
    .slice(0, NEXT_PACKS)
    .flatMap(({ packId, number, plannedOn, stoppers: [stopper, ...more] }) =>
      stopper ? [{ packId, number, plannedOn, stopper, more: more.length }] : [],
    );
  return { rows, all: packs.length };
}

async function tightByArea(reading: Reading, places: Places): Promise<TodayAnswer['tightByArea']> {
  const [stages, planned] = await Promise.all([stagesByArea(reading), plannedByArea(reading)]);
  return stages.map(({ areaId, stages: counts }) => {
    const checked = reached(counts, 'checked');
    return {
      area: placeOf(places.areas, areaId),
      total: totalOf(counts),
      checked,
      tight: counts.tight,
      begun: counts['part-tight'] + counts['nipped-up'],
      planned: planned.get(areaId) ?? 0,
    };
  });
}

async function flagCounts({
  db,
  siteId,
  shutdownId,
}: Reading): Promise<Pick<TodayAnswer, 'needsReview' | 'holds' | 'leaking'>> {
  const { rows } = await db.query<Pick<TodayAnswer, 'needsReview' | 'holds' | 'leaking'>>({
    name: 'flag-counts',
    text: `SELECT count(*) FILTER (WHERE 'needs-review' = ANY(flags)) AS "needsReview",
        count(*) FILTER (WHERE 'on-hold' = ANY(flags)) AS holds, count(*) FILTER (WHERE 'leaking' = ANY(flags)) AS leaking
      FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND voided IS NULL
        AND flags && ARRAY['needs-review', 'on-hold', 'leaking']`,
    values: [siteId, shutdownId],
  });
  return rows[0] ?? { needsReview: 0, holds: 0, leaking: 0 };
}

const shown = ({ name, day, start, end }: ShiftAt) => ({ name, day, start, end });

/** `GET /today`: what was left part tight, what stops the next packs and whose it is, and what must not be forgotten. */
export async function today(reading: Reading): Promise<TodayAnswer> {
  const { shutdown, now } = reading;
  const { shifts, timeZone, startsOn, endsOn } = shutdown;
  const shift = shiftAt(now, shifts, timeZone);
  const lastShift = shiftAt(new Date(Date.parse(shift.start) - 1).toISOString(), shifts, timeZone);
  const [places, holders] = await Promise.all([loadPlaces(reading), roleHolders(reading)]);
  const [counts, partTight, packs, signOffs, still, byArea, lapses, areas, curve, flags] = await Promise.all([
    shutdownCounts(reading),
    partTightRows(reading, places),
    nextPacks(reading),
    waitingSignOffs(reading, holders),
    stillIn(reading),
    lastShiftByArea(reading, lastShift, places),
    lapsesInShift(reading, shift, places),
    tightByArea(reading, places),
    planAndActual(reading),
    flagCounts(reading),
  ]);
  return {
    now,
    shutdown: {
      name: shutdown.name,
      startsOn,
      endsOn,
      timeZone,
      dayNumber: daysBetween(startsOn, dayOf(now, timeZone)) + 1,
      days: daysBetween(startsOn, endsOn) + 1,
    },
    shift: shown(shift),
    lastShift: shown(lastShift),
    total: totalOf(counts),
    tight: reached(counts, 'tight'),
    partTight,
    packs,
    signOffs,
    stillIn: still,
    lastShiftByArea: byArea,
    lapses,
    tightByArea: areas,
    curve,
    ...flags,
  };
}
