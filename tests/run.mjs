// `npm test`: all tests, the browser included, kind by kind so that a failure names its kind.
// `npm test -- api browser` runs those kinds only.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
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

for (const kind of chosen) {
  console.log(`\n=== ${kind} tests`);
  run(process.execPath, [
    'node_modules/vitest/vitest.mjs',
    'run',
    '--config',
    'tests/vitest.config.ts',
    '--project',
    kind,
  ]);
}
