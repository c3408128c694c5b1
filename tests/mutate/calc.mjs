// Each constant and exponent of a formula of packages/calc is changed by 1 % in turn: a test must notice. Prints what
// survived and fails then. The source stays as it is: the number is changed while the module loads
// (calc.vitest.config.ts). Tables, plausibility ranges, thread spellings and the simulation are left out. A part of a path picks files:
// `npm run mutate -- calc torque`.
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { formulaNumbers } from './calc-numbers.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const AT_ONCE = 2;
const FOLDERS = [
  'alignment',
  'blind',
  'code-loads',
  'elongation',
  'pressure-test',
  'stud-length',
  'target',
  'tensioner',
  'threads',
  'torque',
];

const [part = ''] = process.argv.slice(2).filter((word) => word !== 'calc');
const files = FOLDERS.flatMap((folder) =>
  readdirSync(`${root}/packages/calc/src/${folder}`)
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `/packages/calc/src/${folder}/${name}`),
).filter((file) => file.includes(part) && !file.endsWith('/designation.ts'));

/** Whether the tests fail with the number changed (or, without a number, as they are). */
function testsFail(mutation) {
  const args = ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/mutate/calc.vitest.config.ts'];
  const env = { ...process.env, MUTATE_FILE: mutation?.file ?? '', MUTATE_AT: String(mutation?.start ?? 0) };
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, args, { cwd: root, env, stdio: 'ignore' });
    child.on('error', fail);
    child.on('exit', (code) => done(code !== 0));
  });
}

if (await testsFail()) throw new Error('Tests fail before any number is changed.');
const waiting = files.flatMap((file) =>
  formulaNumbers(readFileSync(`${root}${file}`, 'utf8')).map((number) => ({ file, ...number })),
);
const all = waiting.length;
const survived = [];
await Promise.all(
  Array.from({ length: AT_ONCE }, async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      if (await testsFail(next)) continue;
      survived.push(next);
      console.log(`SURVIVED  ${next.file}:${next.line}  ${next.text}`);
    }
  }),
);
console.log(`\n${all - survived.length} of ${all} changed numbers were caught.`);
if (all === 0 || survived.length > 0) process.exitCode = 1;
