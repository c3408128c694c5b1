import { POSITIVE, requireInRange } from '../checks.ts';
import type { TighteningSequence } from './tightening-sequence.ts';

/**
 * Time with the tool for a sequence.
 *
 * @param input.secondsPerMove site's own experience, s
 * @returns hours of tool time; tools of one step work at the same time
 */
export function wrenchTime(input: {
  readonly sequence: TighteningSequence;
  readonly secondsPerMove: number;
  readonly tools: number;
}): { readonly hours: number } {
  requireInRange([
    ['secondsPerMove', input.secondsPerMove, POSITIVE],
    ['tools', input.tools, { min: 1 }],
  ]);
  return { hours: (input.sequence.moves * input.secondsPerMove) / input.tools / 3600 };
}
