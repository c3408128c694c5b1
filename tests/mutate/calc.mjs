// Each constant and exponent of a formula of packages/calc is changed by 1 % in turn: a test must notice. Prints what
// survived and fails then. The source stays as it is: the number is changed while the module loads
// (calc.vitest.config.ts). A first run learns which test files reach which source file; a mutation then runs only
// those, the quickest first. Tables, plausibility ranges and thread spellings are left out. A part of a path picks
// files: `npm run mutate -- calc torque`.
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { EQUIVALENT } from './calc-equivalent.mjs';
import { formulaNumbers } from './calc-numbers.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');
const AT_ONCE = 2;
/** Names of documents, dimension and strength tables, spellings of threads: no formulas. */
const NO_FORMULAS = ['/tables/', '/designation.ts', '/sources.ts', '/version.ts', '/index.ts'];

const [part = ''] = process.argv.slice(2).filter((word) => word !== 'calc');
const files = readdirSync(`${root}/packages/calc/src`, { recursive: true })
  .map((name) => `/packages/calc/src/${name}`)
  .filter((file) => file.endsWith('.ts') && file.includes(part) && !NO_FORMULAS.some((none) => file.includes(none)))
  .sort();

/** A change that makes a loop endless is noticed too. */
const ENDLESS_MS = 300_000;

/** Whether the tests fail under these settings. */
function testsFail(settings) {
  const args = ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/mutate/calc.vitest.config.ts'];
  const env = { ...process.env, ...settings };
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, args, { cwd: root, env, stdio: 'ignore' });
    child.on('error', fail);
    const endless = setTimeout(() => child.kill('SIGKILL'), ENDLESS_MS);
    child.on('exit', (code) => {
      clearTimeout(endless);
      done(code !== 0);
    });
  });
}

/** Test files by the source file that they run functions of, the quickest first; '' holds all of them. */
async function learn() {
  const folder = await mkdtemp(join(tmpdir(), 'mutate-'));
  try {
    const out = join(folder, 'reached');
    if (await testsFail({ MUTATE_LEARN: out })) throw new Error('Tests fail before any number is changed.');
    const lines = (await readFile(out, 'utf8'))
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    const tests = lines.toSorted((a, b) => a.took_ms - b.took_ms);
    const nameOf = ({ test }) => test.slice(root.length + 1);
    const byFile = new Map([['', tests.map(nameOf)]]);
    for (const test of tests) {
      for (const file of test.reached) byFile.set(file, [...(byFile.get(file) ?? []), nameOf(test)]);
    }
    return byFile;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const testsOf = await learn();
const waiting = files.flatMap((file) => {
  const code = readFileSync(`${root}${file}`, 'utf8');
  return formulaNumbers(code).map((number) => ({ file, code: code.split('\n')[number.line - 1].trim(), ...number }));
});
const allowed = waiting.filter(({ file, code }) =>
  EQUIVALENT.some((one) => file.endsWith(one.file) && code === one.code),
);
const asked = waiting.filter((one) => !allowed.includes(one));
const all = asked.length;
const survived = [];
await Promise.all(
  Array.from({ length: AT_ONCE }, async () => {
    for (let next = asked.shift(); next; next = asked.shift()) {
      const tests = testsOf.get(next.file) ?? testsOf.get('') ?? [];
      const mutation = { MUTATE_FILE: next.file, MUTATE_AT: String(next.start), MUTATE_TESTS: JSON.stringify(tests) };
      if (await testsFail(mutation)) continue;
      survived.push(next);
      console.log(`SURVIVED  ${next.file}:${next.line}  ${next.text}  ${next.code}`);
    }
  }),
);
for (const one of EQUIVALENT) {
  const count = allowed.filter(({ file, code }) => file.endsWith(one.file) && code === one.code).length;
  if (count > 0) console.log(`left out  ${one.file}  ${one.code}  ${one.why}`);
  if (count === 0 && part === '')
    throw new Error(`${one.file} has no line "${one.code}" any more: take it off the list.`);
}
console.log(
  `\n${all - survived.length} of ${all} changed numbers were caught; ${allowed.length} left out as equivalent.`,
);
if (all === 0 || survived.length > 0) process.exitCode = 1;
