import type { KeyObject } from 'node:crypto';

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

/** A signed head whose signature fits, or what is wrong with it. */
export type SignedHeadChecked =
  | { readonly wrong: string; readonly byAnother?: boolean }
  | (KeptHead & {
      readonly origin: string;
      readonly siteId: string;
      readonly streamId: string;
      readonly time: string;
      readonly signer: string;
      readonly wrong?: never;
    });
export function fingerprintOf(key: KeyObject): string;
export function openNote(note: string, name: string, key: KeyObject): string | null | undefined;
export function checkSignedHead(note: string, keys: readonly KeyObject[], what?: string): SignedHeadChecked;
