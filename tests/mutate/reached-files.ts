import { appendFileSync } from 'node:fs';
import { type Profiler, Session } from 'node:inspector';
import { afterAll, expect } from 'vitest';

// Notes which files of packages/calc a test file runs a function of. Loading a module does not count: every test
// loads all of them through the package's index.
const out = process.env.MUTATE_LEARN ?? '';
const session = new Session();
session.connect();
session.post('Profiler.enable');
session.post('Profiler.startPreciseCoverage', { callCount: false, detailed: false });
const started = performance.now();

/** Whether something below the module itself ran; the module is wrapped in functions that span all of it. */
function ranInside({ functions }: Profiler.ScriptCoverage): boolean {
  const ends = functions.flatMap(({ ranges }) => ranges.map(({ endOffset }) => endOffset));
  const end = Math.max(...ends);
  return functions.some(({ ranges: [range] }) => range !== undefined && range.count > 0 && range.endOffset < end - 20);
}

afterAll(() => {
  session.post('Profiler.takePreciseCoverage', (error, coverage) => {
    if (error) throw error;
    const reached = coverage.result
      .filter(({ url }) => url.includes('/packages/calc/src/'))
      .filter(ranInside)
      .map(({ url }) => url.slice(url.indexOf('/packages/calc/src/')));
    const test = expect.getState().testPath ?? '';
    appendFileSync(out, `${JSON.stringify({ test, reached, took_ms: performance.now() - started })}\n`);
  });
  session.disconnect();
});
