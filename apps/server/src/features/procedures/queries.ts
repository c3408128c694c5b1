import type {
  GasketDataAnswer,
  LubricantsAnswer,
  MakerTorquesAnswer,
  ProceduresAnswer,
  TargetTablesAnswer,
} from '@seatwell/contract';
import { type Against, actionsOf } from '../reading/actions.ts';
import { byText } from '../reading/by-text.ts';
import { maybeInstant } from '../reading/days.ts';
import { namesOf } from '../reading/names.ts';
import type { SiteReading } from '../reading/reading.ts';

type ProcedureRow = ProceduresAnswer['rows'][number];

const against =
  (state: ProcedureRow['state']) =>
  (type: string): Against | null => {
    if (type === 'procedure-approved' && state !== 'draft')
      return { code: 'not-a-draft', message: 'Only a draft is approved.' };
    if (type === 'procedure-superseded' && state !== 'approved')
      return { code: 'not-in-use', message: 'Only an approved revision that is in use is superseded.' };
    if (type === 'procedure-drafted' && state !== 'draft')
      return { code: 'never-edited', message: 'An approved revision is never edited. Draft the next one.' };
    return null;
  };

/** `GET /procedures`: every revision, the newest first within a procedure. */
export async function procedures({ prisma, db, siteId, actor }: SiteReading): Promise<ProceduresAnswer> {
  const rows = await prisma.procedureRevision.findMany({
    where: { siteId },
    orderBy: { revision: 'desc' },
  });
  const names = await namesOf(
    db,
    siteId,
    rows.map((row) => row.approvedBy),
  );
  return {
    rows: rows
      .sort(
        byText(
          (row) => row.code,
          (row) => row.procedureId,
        ),
      )
      .map((row) => {
        const state = row.supersededAt ? 'superseded' : row.approvedAt ? 'approved' : 'draft';
        return {
          procedureId: row.procedureId,
          revision: row.revision,
          code: row.code,
          title: row.title,
          content: row.content as unknown as ProcedureRow['content'],
          contentHash: row.contentHash,
          draftedAt: row.draftedAt.toISOString(),
          approvedAt: maybeInstant(row.approvedAt),
          approvedBy: names.maybe(row.approvedBy),
          supersededAt: maybeInstant(row.supersededAt),
          state,
          actions: actionsOf(
            actor,
            ['procedure-drafted', 'procedure-approved', 'procedure-superseded'],
            {},
            against(state),
          ),
        };
      }),
    actions: actionsOf(actor, ['procedure-drafted'], {}),
  };
}

async function sourced<C>(
  { prisma, siteId, actor }: SiteReading,
  kind: 'gasket-data' | 'lubricant' | 'maker-torque',
  type: 'gasket-data-entered' | 'lubricant-entered' | 'maker-torque-entered',
) {
  const rows = await prisma.sourcedData.findMany({ where: { siteId, kind } });
  return {
    rows: rows
      .sort(
        byText(
          (row) => row.name,
          (row) => row.dataId,
        ),
      )
      .map(({ dataId, name, hash, content }) => ({ dataId, name, hash, content: content as C })),
    actions: actionsOf(actor, [type], {}),
  };
}

/** `GET /gasket-data` */
export const gasketData = (reading: SiteReading): Promise<GasketDataAnswer> =>
  sourced(reading, 'gasket-data', 'gasket-data-entered');

/** `GET /lubricants` */
export const lubricants = (reading: SiteReading): Promise<LubricantsAnswer> =>
  sourced(reading, 'lubricant', 'lubricant-entered');

/** `GET /maker-torques` */
export const makerTorques = (reading: SiteReading): Promise<MakerTorquesAnswer> =>
  sourced(reading, 'maker-torque', 'maker-torque-entered');

/** `GET /target-tables` */
export async function targetTables({ prisma, db, siteId, actor }: SiteReading): Promise<TargetTablesAnswer> {
  const rows = await prisma.targetTable.findMany({
    where: { siteId },
    orderBy: { approvedAt: 'desc' },
  });
  const names = await namesOf(
    db,
    siteId,
    rows.map((row) => row.approvedBy),
  );
  return {
    rows: rows.sort(byText((row) => row.name)).map(({ tableId, name, content, approvedAt, approvedBy }) => ({
      tableId,
      name,
      content: content as unknown as TargetTablesAnswer['rows'][number]['content'],
      approvedAt: approvedAt.toISOString(),
      approvedBy: names.maybe(approvedBy),
    })),
    actions: actionsOf(actor, ['target-table-approved'], {}),
  };
}
