// `npm test`: all tests, the browser included, kind by kind so that a failure names its kind.
// `npm test -- api browser` runs those kinds only.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const kinds = ['unit', 'published', 'repo', 'api', 'faults', 'browser'];
const asked = process.argv.slice(2).filter((word) => kinds.includes(word));
const chosen = asked.length > 0 ? asked : kinds;

function run(command, args) {
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', env: process.env });
  if (status !== 0) process.exit(status ?? 1);
}

const built = existsSync(`${root}/apps/server/dist/main.js`) && existsSync(`${root}/apps/web/dist/index.html`);
if (chosen.some((kind) => ['faults', 'browser'].includes(kind)) || !built) run('npm', ['run', 'build']);

const reports = mkdtempSync(join(tmpdir(), 'seatwell-reports-'));
process.on('exit', () => rmSync(reports, { recursive: true, force: true }));

let passed = 0;
for (const kind of chosen) {
  console.log(`\n=== ${kind} tests`);
  const report = join(reports, `${kind}.json`);
  run(process.execPath, [
    'node_modules/vitest/vitest.mjs',
    'run',
    '--config',
    'tests/vitest.config.ts',
    '--project',
    kind,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  passed += JSON.parse(readFileSync(report, 'utf8')).numPassedTests;
}
// A kind that fails ends the run above.
console.log(`\n${passed} passed, 0 failed`);
