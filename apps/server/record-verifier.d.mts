export interface KeptHead {
  readonly sequence: number;
  readonly root: string;
}
/** What is wrong, or what was found right. */
export type Checked = string[] | { readonly events: number; readonly rows?: number; readonly root: string };

export function checkRecord(
  lines: AsyncIterable<string> | Iterable<string>,
  keptHeads?: readonly KeptHead[],
): Promise<Checked>;
export function checkJointRecord(record: unknown, keptHeads?: readonly KeptHead[]): Checked;
