import type { RegisterAnswer } from '@seatwell/contract';
import { shutdownRead } from '../../app/reads.ts';

/** Joints that somebody found on site and that have only a temporary number. */
export const foundJointsQuery = (shutdownId: string) =>
  shutdownRead<RegisterAnswer>(shutdownId, '/joints?found=true&limit=500');
