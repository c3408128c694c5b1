import type { JointState, MakeState } from '@seatwell/workflow';
import type { FactsLoader } from '../joints/facts.ts';
import type { ChosenData } from './calculated-target.ts';
import { refused } from './target-data.ts';

/** What an approved table gives a joint. @throws Problem `calculation-refused` where the joint is not of its family */
export async function rowOfTable(
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  tableId: string,
): Promise<ChosenData> {
  const table = await facts.targetTable(tableId);
  if (!table) throw refused(joint, 'table-unknown', 'there is no such target table at this site.');
  const { flange } = joint.specification;
  const { content } = table;
  const row = content.rows.find(
    (each) => each.standard === flange.standard && each.size === flange.size && each.rating === flange.rating,
  );
  if (!row) {
    throw refused(
      joint,
      'not-in-table',
      `table “${table.name}” has no row for ${flange.standard} ${flange.size} ${flange.rating}.`,
    );
  }
  if (make.procedure?.procedureId !== content.procedureId || make.procedure.revision !== content.procedureRevision) {
    throw refused(
      joint,
      'table-of-other-procedure',
      `table “${table.name}” was approved for another procedure revision.`,
    );
  }
  if (joint.bolting?.grade !== content.boltGrade) {
    throw refused(
      joint,
      'table-of-other-grade',
      `table “${table.name}” is for ${content.boltGrade} bolts, this joint has ${joint.bolting?.grade ?? 'none named'}.`,
    );
  }
  return {
    gasketDataId: content.gasketDataId,
    lubricantId: content.lubricantId,
    boltStress_MPa: row.boltStress_MPa,
    acceptedShortfall: row.acceptedShortfall,
  };
}
