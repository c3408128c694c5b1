import type { JointPage, TargetPreview } from '@seatwell/contract';
import { queryOptions } from '@tanstack/react-query';
import { request } from '../../app/api-client.ts';
import { shutdownKey } from '../../app/query-client.ts';
import type { TargetPayload } from './target-draft.ts';

/** What a target would come to; nothing is recorded. */
export const targetPreviewQuery = (
  shutdownId: string,
  jointId: string,
  makeId: string,
  payload: TargetPayload | undefined,
) =>
  queryOptions({
    queryKey: shutdownKey(shutdownId, 'target-preview', jointId, makeId, payload),
    queryFn: ({ signal }) =>
      request<TargetPreview>(`/shutdowns/${shutdownId}/joints/${jointId}/makes/${makeId}/target-preview`, {
        method: 'POST',
        body: payload,
        signal,
      }),
    staleTime: 60_000,
  });

/** What was approved last for a make, as its history has it. */
export function approvedPayload(page: JointPage, makeId: string): TargetPayload | undefined {
  const entry = page.history.find(
    (each) => each.type === 'target-approved' && each.makeId === makeId && each.amendedBy.length === 0,
  );
  const payload = entry?.payload as TargetPayload | undefined;
  // What is explained by it is the window. How the joint is tightened was decided then, and cannot be again once it is.
  return payload?.basis === 'calculated' ? { ...payload, tightening: null } : payload;
}
