import type { Me } from '@seatwell/contract';
import { useParams } from '@tanstack/react-router';
import { lastShutdownId } from './last-shutdown.ts';
import { useMe } from './session.ts';

export type ShutdownOfMe = Me['shutdowns'][number];

/** The shutdown in the address. Only below /shutdowns/:shutdownId. */
export function useShutdownId(): string {
  const { shutdownId } = useParams({ strict: false });
  if (!shutdownId) throw new Error('useShutdownId needs an address below /shutdowns/:shutdownId.');
  return shutdownId;
}

/** The shutdown in the address, or the one looked at last, or the only one; undefined when none is chosen. */
export function useCurrentShutdown(): ShutdownOfMe | undefined {
  const { shutdownId } = useParams({ strict: false });
  const { shutdowns } = useMe();
  return currentShutdown(shutdowns, shutdownId);
}

export function currentShutdown(
  shutdowns: readonly ShutdownOfMe[],
  inAddress: string | undefined,
): ShutdownOfMe | undefined {
  const asked = inAddress ?? lastShutdownId();
  const found = shutdowns.find((each) => each.shutdownId === asked);
  return found ?? (shutdowns.length === 1 ? shutdowns[0] : undefined);
}
