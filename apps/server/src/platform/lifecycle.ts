import type { Log } from './log.ts';
import { StartupError } from './startup-error.ts';

/** npm passes a Ctrl-C on that the terminal has already given: two within this time are one. */
const sameKeyPress_ms = 1_000;

export interface Lifecycle {
  /** Aborted as soon as the process is to stop: long work of the start looks at it. */
  readonly stopping: AbortSignal;
  /** Adds what stops a part; parts stop in the reverse order of their start. */
  onStop(part: string, stop: () => Promise<unknown>): void;
  /** Runs the start: signals stop the process in order from here on. Its failure stops what had started. */
  start(work: () => Promise<void>): Promise<void>;
  /** Stops in order because a part broke, and ends with exit code 1. */
  fail(reason: string): void;
}

/**
 * Start and stop of the process. The first Ctrl-C (SIGINT, SIGTERM or a closed terminal) stops every part in
 * order and ends with exit code 0; a second one ends at once with 130.
 */
export function createLifecycle(log: Log): Lifecycle {
  const parts: { part: string; stop: () => Promise<unknown> }[] = [];
  const abort = new AbortController();
  let starting: Promise<unknown> = Promise.resolve();
  let firstSignal_ms: number | undefined;

  async function stop(exitCode: number): Promise<void> {
    if (abort.signal.aborted) return;
    abort.abort();
    await starting;
    let code = exitCode;
    for (const { part, stop: stopPart } of parts.reverse()) {
      try {
        await stopPart();
      } catch (error) {
        log.error(`${part} did not stop in order: ${describe(error)}`);
        code = 1;
      }
    }
    process.exit(code);
  }

  function onSignal(name: NodeJS.Signals): void {
    const now = performance.now();
    if (firstSignal_ms === undefined) {
      firstSignal_ms = now;
      log.info(`${name}: finishing the requests under way, then stopping. Once more ends at once.`);
      void stop(0);
    } else if (now - firstSignal_ms > sameKeyPress_ms) {
      log.warn('Ended at once; requests under way are cut off.');
      process.exit(130);
    }
  }

  return {
    stopping: abort.signal,
    onStop: (part, stopPart) => parts.push({ part, stop: stopPart }),
    async start(work) {
      for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(name, onSignal);
      const running = work();
      starting = running.catch(() => undefined);
      try {
        await running;
      } catch (error) {
        if (!abort.signal.aborted) {
          log.error(describe(error));
          await stop(1);
        }
      }
    },
    fail(reason) {
      if (abort.signal.aborted) return;
      log.error(reason);
      void stop(1);
    },
  };
}

/** A reason that the person can mend needs no stack; anything else does. */
function describe(error: unknown): string {
  if (error instanceof StartupError) return error.message;
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
