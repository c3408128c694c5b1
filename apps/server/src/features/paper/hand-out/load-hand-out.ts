import { Problem } from '../../../platform/errors/problem.ts';
import type { Lubricant } from '../../engineering/target-request.ts';
import type { SiteReading } from '../../reading/reading.ts';
import type { SheetProcedure } from '../joint-sheet/sheet-source.ts';

/** What the hand-out of a pre-job talk is made from. */
export interface HandOutSource {
  readonly site: string;
  readonly procedure: SheetProcedure;
  readonly lubricant: { readonly name: string; readonly nutFactor: number; readonly source: string } | null;
  /** ISO instant of the latest record of the revision: the date of the document */
  readonly recordedAt: string;
  /** bolts of the picture */
  readonly bolts: number;
}

/** The smallest usual count that the procedure is for and its grouping fits. */
export function exampleBolts({ appliesTo, group, tools }: SheetProcedure['content']): number {
  const { leastBolts, mostBolts } = appliesTo;
  const most = Math.min(mostBolts, 200);
  const fits = (count: number) => count % (group ?? 1) === 0 && count / (group ?? 1) >= 4 && count >= tools;
  for (let count = Math.max(8, Math.ceil(leastBolts / 4) * 4); count <= most; count += 4) if (fits(count)) return count;
  return Math.max(4, Math.min(leastBolts, 200));
}

/** @throws Problem `not-found` when the site has no such revision */
export async function loadHandOut(
  { db, siteId }: Pick<SiteReading, 'db' | 'siteId'>,
  { procedureId, revision }: { readonly procedureId: string; readonly revision: number },
  bolts: number | undefined,
): Promise<HandOutSource> {
  const { rows } = await db.query<{
    site: string;
    code: string;
    title: string;
    content: SheetProcedure['content'];
    drafted_at: Date;
    approved_at: Date | null;
    superseded_at: Date | null;
    lubricant: Lubricant | null;
  }>({
    name: 'hand-out',
    text: `SELECT s.name AS site, p.code, p.title, p.content, p.drafted_at, p.approved_at, p.superseded_at,
        d.content AS lubricant
      FROM procedure_revision p JOIN site s ON s.site_id = p.site_id
      LEFT JOIN sourced_data d ON d.site_id = p.site_id AND d.data_id = (p.content->>'lubricantId')::uuid AND d.kind = 'lubricant'
      WHERE p.site_id = $1 AND p.procedure_id = $2 AND p.revision = $3`,
    values: [siteId, procedureId, revision],
  });
  const row = rows[0];
  if (!row) throw new Problem('not-found', `This site has no revision ${revision} of the procedure ${procedureId}.`);
  const { site, code, title, content, lubricant } = row;
  return {
    site,
    procedure: {
      code,
      title,
      revision,
      approved: row.approved_at !== null,
      superseded: row.superseded_at !== null,
      content,
    },
    lubricant,
    recordedAt: (row.superseded_at ?? row.approved_at ?? row.drafted_at).toISOString(),
    bolts: bolts ?? exampleBolts(content),
  };
}
