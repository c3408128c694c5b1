import type { JointRow } from '@seatwell/contract';

/** A ticked joint, with what a decision over it needs. */
export interface SelectedJoint {
  readonly jointId: string;
  readonly makeId: string | null;
  readonly version: number;
  readonly tag: string;
}

/** Ticked joints by id. */
export type Selection = ReadonlyMap<string, SelectedJoint>;

const pick = ({ jointId, makeId, version, tag }: SelectedJoint): SelectedJoint => ({ jointId, makeId, version, tag });

/** The selection after the table's ticks: joints that were ticked before keep what is known of them. */
export function tickedTo(ids: ReadonlySet<string>, before: Selection, rows: readonly JointRow[]): Selection {
  const known = new Map<string, SelectedJoint>(before);
  for (const row of rows) known.set(row.jointId, pick(row));
  return new Map([...ids].flatMap((id) => (known.has(id) ? [[id, known.get(id) as SelectedJoint] as const] : [])));
}

/** The ticked joints as they are shown now: a decision says which version its maker saw. */
export function selectedNow(selection: Selection, rows: readonly JointRow[]): readonly SelectedJoint[] {
  const shown = new Map(rows.map((row) => [row.jointId, row]));
  return [...selection.values()].map((joint) => pick(shown.get(joint.jointId) ?? joint));
}
