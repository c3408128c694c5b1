import { Problem } from '../../platform/errors/problem.ts';
import type { ShutdownRow } from '../shutdowns/load-shutdown.ts';

/** The shutdown of a command of the shutdown stream. */
export function shutdownOf(input: { readonly shutdown: ShutdownRow | null }): ShutdownRow {
  if (!input.shutdown) throw new Problem('not-found', 'This command belongs to a shutdown and none was named.');
  return input.shutdown;
}
