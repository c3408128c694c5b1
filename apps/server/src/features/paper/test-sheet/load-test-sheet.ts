import type { PackPage } from '@seatwell/contract';
import { dayOf } from '@seatwell/workflow';
import { packPage } from '../../packs/queries.ts';
import type { Reading } from '../../reading/reading.ts';
import { siteName } from '../site-name.ts';

export interface SheetGauge {
  readonly tag: string;
  readonly scaleMaximum: number;
  readonly scaleUnit: string;
  readonly scaleDivision: number | null;
  readonly failedOn: string | null;
  readonly calibratedOn: string | null;
  readonly validThrough: string | null;
  readonly certificateNumber: string | null;
  readonly provisional: boolean | null;
}

export interface SheetBlind {
  readonly number: string;
  readonly type: 'spade' | 'spectacle' | 'blind-flange' | 'test-blind';
  readonly rating: string | null;
  readonly thickness_mm: number | null;
  readonly joint: string | null;
  readonly in: boolean;
  readonly out: boolean;
}

/** Everything that a test sheet is made from. */
export interface TestSheetSource {
  readonly site: string;
  readonly shutdown: string;
  readonly timeZone: string;
  readonly printedAt: string;
  readonly address: string;
  readonly pack: PackPage;
  readonly gauges: readonly SheetGauge[];
  readonly blinds: readonly SheetBlind[];
  /** gas in the pack; null where nobody gave it */
  readonly volume_m3: number | null;
}

async function gaugesOf({ db, siteId, shutdown, now }: Reading, toolIds: readonly string[]): Promise<SheetGauge[]> {
  const { rows } = await db.query<SheetGauge>({
    name: 'test-sheet-gauges',
    text: `SELECT t.tag, t.scale_maximum AS "scaleMaximum", t.scale_unit AS "scaleUnit", t.scale_division AS "scaleDivision",
        t.failed_on AS "failedOn", c.calibrated_on AS "calibratedOn", c.valid_through AS "validThrough",
        c.certificate_number AS "certificateNumber", c.provisional
      FROM tool t LEFT JOIN LATERAL (SELECT * FROM calibration c WHERE c.site_id = t.site_id AND c.tool_id = t.tool_id
        AND c.calibrated_on <= $3::date AND c.valid_through >= $3::date
        ORDER BY c.provisional, c.valid_through DESC, c.calibration_id LIMIT 1) c ON true
      WHERE t.site_id = $1 AND t.tool_id = ANY($2::uuid[]) ORDER BY t.tag COLLATE "C"`,
    values: [siteId, toolIds, dayOf(now, shutdown.timeZone)],
  });
  return rows;
}

async function blindsOf({ db, siteId, shutdownId }: Reading, packId: string): Promise<SheetBlind[]> {
  const { rows } = await db.query<SheetBlind>({
    name: 'test-sheet-blinds',
    text: `SELECT b.number, b.type, b.plan->>'rating' AS rating, (b.plan->>'thickness_mm')::float AS thickness_mm,
        j.tag AS joint, b.in_at IS NOT NULL AS "in", b.out_at IS NOT NULL AS "out"
      FROM blind b LEFT JOIN joint j ON j.site_id = b.site_id AND j.shutdown_id = b.shutdown_id AND j.joint_id = b.joint_id
      WHERE b.site_id = $1 AND b.shutdown_id = $2 AND (b.pack_id = $3 OR b.joint_id IN (SELECT joint_id FROM make_pack
        WHERE site_id = $1 AND shutdown_id = $2 AND pack_id = $3)) ORDER BY b.number COLLATE "C"`,
    values: [siteId, shutdownId, packId],
  });
  return rows;
}

/** @throws Problem `not-found` for another shutdown's pack */
export async function loadTestSheet(
  reading: Reading,
  packId: string,
  order: { readonly origin: string; readonly volume_m3: number | null },
): Promise<TestSheetSource> {
  const pack = await packPage(reading, packId);
  const gaugeIds = [...(pack.released?.gaugeIds ?? []), ...pack.readings.flatMap((each) => each.gaugeIds)];
  const [site, gauges, blinds] = await Promise.all([
    siteName(reading),
    gaugesOf(reading, [...new Set(gaugeIds)]),
    blindsOf(reading, packId),
  ]);
  const { shutdown, shutdownId, now } = reading;
  return {
    site,
    shutdown: shutdown.name,
    timeZone: shutdown.timeZone,
    printedAt: now,
    address: `${order.origin}/shutdowns/${shutdownId}/packs/${packId}`,
    pack,
    gauges,
    blinds,
    volume_m3: order.volume_m3,
  };
}
