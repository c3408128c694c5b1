import { existsSync, readdirSync, readFileSync, readlinkSync } from 'node:fs';

/** Whether the system knows the number, be it of a process that has ended and is not yet collected. */
export function hasProcessEntry(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/**
 * Whether a process with this number runs (it may be anyone's). One that ended but waits for its parent to
 * notice does not count: the first process of a container may never look.
 */
export function isAlive(pid: number): boolean {
  return hasProcessEntry(pid) && processStatus(pid)?.[0] !== 'Z';
}

/**
 * What tells a process from a later one with the same number: the boot and its start tick. Empty where the
 * system does not tell (no /proc), so that only the number counts there.
 */
export function processIdentity(pid: number): string {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    return `${boot}:${processStatus(pid)?.[19]}`;
  } catch {
    return '';
  }
}

/** The fields of /proc/<pid>/stat from the third (state) on: the name before it may hold spaces. */
function processStatus(pid: number): string[] | undefined {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return text.slice(text.lastIndexOf(')') + 2).split(' ');
  } catch {
    return undefined;
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

/** Live processes with this working folder; none where the system does not tell (no /proc). */
export function processesIn(folder: string): number[] {
  if (!existsSync('/proc/self')) return [];
  return readdirSync('/proc')
    .map(Number)
    .filter((pid) => pid > 0 && workingFolder(pid) === folder && isAlive(pid));
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
