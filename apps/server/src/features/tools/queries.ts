import type { ToolRow, ToolsAnswer } from '@seatwell/contract';
import { dayOf } from '@seatwell/workflow';
import type { Calibration, Tool } from '../../platform/database/generated/client.ts';
import { actionsOf } from '../reading/actions.ts';
import { byText } from '../reading/by-text.ts';
import { daysAfter, dayText, LAPSING_DAYS, maybeDay, maybeInstant } from '../reading/days.ts';
import type { SiteReading } from '../reading/reading.ts';
import { siteZone } from '../reading/site-zone.ts';

type CalibrationRow = ToolRow['calibrations'][number];

const calibrationRow = (row: Calibration): CalibrationRow => ({
  calibrationId: row.calibrationId,
  calibratedOn: dayText(row.calibratedOn),
  validThrough: dayText(row.validThrough),
  certificateNumber: row.certificateNumber,
  certificate: row.certificate,
  provisional: row.provisional,
  clearedAt: maybeInstant(row.clearedAt),
  pairs: row.pairs as CalibrationRow['pairs'],
});

function toolState(tool: Tool, calibrations: readonly CalibrationRow[], inForce: CalibrationRow | null, today: string) {
  if (tool.failedOn) return 'failed';
  if (calibrations.length === 0) return 'never-calibrated';
  if (!inForce) return 'lapsed';
  if (inForce.provisional && inForce.clearedAt === null) return 'provisional';
  return inForce.validThrough <= daysAfter(today, LAPSING_DAYS) ? 'lapsing' : 'in-calibration';
}

/** `GET /tools`: each with the calibration that is in force today. */
export async function tools({ prisma, db, siteId, actor, now }: SiteReading): Promise<ToolsAnswer> {
  const [rows, calibrations, zone] = await Promise.all([
    prisma.tool.findMany({ where: { siteId } }),
    prisma.calibration.findMany({ where: { siteId }, orderBy: [{ calibratedOn: 'desc' }, { calibrationId: 'asc' }] }),
    siteZone(db, siteId),
  ]);
  const today = dayOf(now, zone);
  const ofTool = new Map<string, CalibrationRow[]>();
  for (const row of calibrations) ofTool.set(row.toolId, [...(ofTool.get(row.toolId) ?? []), calibrationRow(row)]);
  return {
    rows: rows.sort(byText((row) => row.tag)).map((tool) => {
      const own = ofTool.get(tool.toolId) ?? [];
      const inForce = own.find((each) => each.calibratedOn <= today && each.validThrough >= today) ?? null;
      return {
        toolId: tool.toolId,
        tag: tool.tag,
        kind: tool.kind as ToolRow['kind'],
        maker: tool.maker,
        scaleMinimum: tool.scaleMinimum,
        scaleMaximum: tool.scaleMaximum,
        scaleUnit: tool.scaleUnit as ToolRow['scaleUnit'],
        scaleDivision: tool.scaleDivision,
        hydraulicArea_mm2: tool.hydraulicArea_mm2,
        failedOn: maybeDay(tool.failedOn),
        inForce,
        state: toolState(tool, own, inForce, today),
        calibrations: own,
      };
    }),
    actions: actionsOf(actor, ['tool-registered', 'calibration-recorded', 'calibration-cleared', 'tool-failed'], {}),
  };
}
