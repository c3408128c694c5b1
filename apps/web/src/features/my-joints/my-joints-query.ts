import type { MyJointsAnswer } from '@seatwell/contract';
import { shutdownRead } from '../../app/reads.ts';

/** The caller's joints in the order of what can be done now. */
export const myJointsQuery = (shutdownId: string) => shutdownRead<MyJointsAnswer>(shutdownId, '/my-joints');
