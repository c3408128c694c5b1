import type { CommandAnswer } from '@seatwell/contract';
import { request } from '../app/api-client.ts';
import { ApiProblem, isSessionEnd } from '../app/api-problem.ts';
import { dropPhoto, keepFact, keepPhoto, keptPhoto } from './device-store.ts';
import { hashesIn, type QueuedFact, withPhotos } from './queued-fact.ts';

export type Sent =
  | { readonly kind: 'recorded'; readonly answer: CommandAnswer }
  | { readonly kind: 'refused'; readonly problem: ApiProblem }
  /** nothing was heard, or nothing final: it is sent again later */
  | { readonly kind: 'silent' };

// A line that is neither up nor down: after this long another try is better than waiting on.
const patience_ms = 20_000;

/** Whether an answer says nothing about the fact itself: it is asked again later. */
const notFinal = ({ code, status }: ApiProblem): boolean =>
  code === 'no-answer' || status >= 500 || status === 429 || status === 408 || status === 401;

/** Sends a photo of the device to the server. @returns the hash under which the server keeps it */
export async function sendPhoto(file: Blob): Promise<string> {
  const body = new FormData();
  body.append('file', file);
  const { hash } = await request<{ hash: string }>('/files', { method: 'POST', body });
  return hash;
}

/** Photos that were taken without signal go first: the fact is then put in the server's names for them, and kept so. */
async function photosSent(fact: QueuedFact): Promise<QueuedFact> {
  const stored = new Map<string, string>();
  for (const hash of new Set(hashesIn([fact.command.payload, fact.command.paperForm]))) {
    const photo = await keptPhoto(hash).catch(() => undefined);
    if (!photo) continue;
    const known = photo.stored ?? (await sendPhoto(photo.file));
    if (photo.stored === null) await keepPhoto({ ...photo, stored: known });
    stored.set(hash, known);
  }
  if (stored.size === 0) return fact;
  const named = withPhotos(fact, stored);
  await keepFact(named);
  for (const hash of stored.keys()) await dropPhoto(hash);
  return named;
}

/** Sends one fact, once. */
export async function sendFact(fact: QueuedFact): Promise<Sent> {
  try {
    const named = await photosSent(fact);
    const answer = await request<CommandAnswer>(`/shutdowns/${fact.shutdownId}/commands/${fact.type}`, {
      method: 'POST',
      body: named.command,
      signal: AbortSignal.timeout(patience_ms),
    });
    return { kind: 'recorded', answer };
  } catch (error) {
    // A wrong or missing secret of a signature is about the fact; a missing session is not.
    if (error instanceof ApiProblem && (!notFinal(error) || (error.status === 401 && !isSessionEnd(error))))
      return { kind: 'refused', problem: error };
    return { kind: 'silent' };
  }
}
