import type { MyJointRow } from '@seatwell/contract';

/** Lists of decisions that are signed together. */
export type SignatureKind = 'release' | 'check' | 'witness' | 'prove';

const KIND_OF_WAIT: Readonly<Record<string, SignatureKind>> = {
  release: 'release',
  check: 'check',
  witness: 'witness',
  proof: 'prove',
};

/** Which signature a joint waits for; null when it waits for work or for nothing that a list signs. */
export function signatureOf(row: Pick<MyJointRow, 'waitsFor'>): SignatureKind | null {
  const kind = KIND_OF_WAIT[row.waitsFor.code] ?? null;
  const { level } = row.waitsFor.data;
  return kind === 'check' && level === 'self' ? null : kind;
}

export interface MyGroups {
  readonly partTight: readonly MyJointRow[];
  /** what waits for a signature of the caller, by kind */
  readonly toSign: ReadonlyMap<SignatureKind, readonly MyJointRow[]>;
  readonly now: readonly MyJointRow[];
  readonly waiting: readonly MyJointRow[];
}

/** The caller's joints by what can be done: the order of the server stays within each group. */
export function groupMine(rows: readonly MyJointRow[]): MyGroups {
  const toSign = new Map<SignatureKind, MyJointRow[]>();
  const now: MyJointRow[] = [];
  for (const row of rows.filter((each) => each.can === 'now')) {
    const kind = signatureOf(row);
    if (kind === null) now.push(row);
    else toSign.set(kind, [...(toSign.get(kind) ?? []), row]);
  }
  return {
    partTight: rows.filter((row) => row.can === 'part-tight'),
    toSign,
    now,
    waiting: rows.filter((row) => row.can === 'waiting'),
  };
}

/** Rows whose tag, line, location or item holds what was typed or scanned, blanks and hyphens aside. */
export function searchMine(rows: readonly MyJointRow[], typed: string): readonly MyJointRow[] {
  const plain = (words: string) => words.toLowerCase().replace(/[\s\-_/.]+/g, '');
  const wanted = plain(typed);
  if (wanted === '') return rows;
  return rows.filter((row) =>
    [row.tag, row.line, row.location, row.item].some((each) => each !== null && plain(each).includes(wanted)),
  );
}
