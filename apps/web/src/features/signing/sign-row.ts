import type { FailedRuleAnswer, ShutdownEventType, ShutdownPayload, TryAnswer } from '@seatwell/contract';
import { request } from '../../app/api-client.ts';

/** One joint of a list that is signed: what the signer saw. */
export interface SignRow {
  readonly jointId: string;
  readonly makeId: string;
  readonly version: number;
  readonly tag: string;
  /** stage and what else the signer goes by, in words */
  readonly detail: string;
}

export interface NotYet {
  readonly row: SignRow;
  readonly failed: readonly FailedRuleAnswer[];
  /** a refusal that is no rule */
  readonly problem: string | null;
}

export interface Tried {
  readonly ready: readonly SignRow[];
  readonly notYet: readonly NotYet[];
}

// More at once would only wait in the browser's own queue.
const atOnce = 6;

/** Asks for each joint what signing would answer, so that every failed rule shows before a secret is typed. */
export async function tryRows<T extends ShutdownEventType>(
  shutdownId: string,
  type: T,
  rows: readonly SignRow[],
  payloadOf: (row: SignRow) => ShutdownPayload<T>,
): Promise<Tried> {
  const ready: SignRow[] = [];
  const notYet: NotYet[] = [];
  for (let from = 0; from < rows.length; from += atOnce) {
    const part = rows.slice(from, from + atOnce);
    const answers = await Promise.all(
      part.map((row) =>
        request<TryAnswer>(`/shutdowns/${shutdownId}/joints/${row.jointId}/makes/${row.makeId}/try/${type}`, {
          method: 'POST',
          body: { versionSeen: row.version, payload: payloadOf(row) },
        }),
      ),
    );
    part.forEach((row, index) => {
      const answer = answers[index];
      if (answer?.wouldRecord) ready.push(row);
      else notYet.push({ row, failed: answer?.failed ?? [], problem: answer?.problem?.message ?? null });
    });
  }
  return { ready, notYet };
}
