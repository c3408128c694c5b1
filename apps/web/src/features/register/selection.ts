import type { JointRow } from '@seatwell/contract';

/** A ticked joint, with what a decision over it needs. */
export interface SelectedJoint {
  readonly jointId: string;
  readonly makeId: string | null;
  readonly version: number;
  readonly tag: string;
  /** crew and day as they are; undefined where the row was not loaded */
  readonly planned?: { readonly crewId: string | null; readonly plannedOn: string | null };
}

/** Ticked joints by id. */
export type Selection = ReadonlyMap<string, SelectedJoint>;

const pick = ({ jointId, makeId, version, tag, crew, plannedOn }: JointRow): SelectedJoint => ({
  jointId,
  makeId,
  version,
  tag,
  planned: { crewId: crew?.crewId ?? null, plannedOn },
});

/** The selection after the table's ticks: joints that were ticked before keep what is known of them. */
export function tickedTo(ids: ReadonlySet<string>, before: Selection, rows: readonly JointRow[]): Selection {
  const known = new Map<string, SelectedJoint>(before);
  for (const row of rows) known.set(row.jointId, pick(row));
  return new Map([...ids].flatMap((id) => (known.has(id) ? [[id, known.get(id) as SelectedJoint] as const] : [])));
}

/** The ticked joints as they are shown now: a decision says which version its maker saw. */
export function selectedNow(selection: Selection, rows: readonly JointRow[]): readonly SelectedJoint[] {
  const shown = new Map(rows.map((row) => [row.jointId, row]));
  return [...selection.values()].map((joint) => {
    const row = shown.get(joint.jointId);
    return row ? pick(row) : joint;
  });
}
