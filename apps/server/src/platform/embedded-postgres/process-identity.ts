import { readFileSync, readlinkSync } from 'node:fs';

/** Whether a process with this number exists (it may be anyone's). */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/**
 * What tells a process from a later one with the same number: the boot and its start tick. Empty where the
 * system does not tell (no /proc), so that only the number counts there.
 */
export function processIdentity(pid: number): string {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // Field 22; the name in field 2 may hold spaces, so count from its closing bracket.
    const startTick = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19];
    return `${boot}:${startTick}`;
  } catch {
    return '';
  }
}

/** Working folder of a process, or undefined where the system does not tell. */
export function workingFolder(pid: number): string | undefined {
  try {
    return readlinkSync(`/proc/${pid}/cwd`);
  } catch {
    return undefined;
  }
}

/** Waits until the process is gone; false when it is still there after the given milliseconds. */
export async function waitUntilGone(pid: number, limit_ms: number): Promise<boolean> {
  const end = Date.now() + limit_ms;
  while (isAlive(pid)) {
    if (Date.now() > end) return false;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  return true;
}
