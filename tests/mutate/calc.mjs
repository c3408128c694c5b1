// Each constant and exponent of a formula of packages/calc is changed by 1 % in turn: a test must notice. Prints what
// survived and fails then. A first run learns which test files reach which source file; a change then runs only those,
// the quickest first, in one of two processes that keep their vitest open (calc-worker.mjs). Tables, plausibility
// ranges and thread spellings are left out. A part of a path picks files: `npm run mutate -- calc torque`.
import { fork, spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { EQUIVALENT } from './calc-equivalent.mjs';
import { formulaNumbers } from './calc-numbers.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');
const worker = fileURLToPath(new URL('calc-worker.mjs', import.meta.url));
const AT_ONCE = 2;
/** A change that makes a loop endless is noticed too. */
const ENDLESS_MS = 300_000;
/** Names of documents, dimension and strength tables, spellings of threads: no formulas. */
const NO_FORMULAS = ['/tables/', '/designation.ts', '/sources.ts', '/version.ts', '/index.ts'];

const [part = ''] = process.argv.slice(2).filter((word) => word !== 'calc');

/** Test files by the source file that they run functions of, the quickest first; '' holds all of them. */
async function learn() {
  const folder = await mkdtemp(join(tmpdir(), 'mutate-'));
  try {
    const out = join(folder, 'reached');
    const args = ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/mutate/calc.vitest.config.ts'];
    const env = { ...process.env, MUTATE_LEARN: out };
    const { code, printed } = await new Promise((done) => {
      const child = spawn(process.execPath, args, { cwd: root, env, stdio: ['ignore', 'pipe', 'ignore'] });
      let text = '';
      child.stdout.setEncoding('utf8').on('data', (chunk) => {
        text += chunk;
      });
      child.on('close', (exit) => done({ code: exit, printed: text }));
    });
    if (code !== 0) throw new Error(`Tests fail before any number is changed.\n${printed.slice(-4000)}`);
    const lines = (await readFile(out, 'utf8')).trim().split('\n');
    const tests = lines.map((line) => JSON.parse(line)).toSorted((a, b) => a.took_ms - b.took_ms);
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

/** The numbers of all formulas, those that are left out as equivalent marked with the reason. */
function numbersToChange() {
  const files = readdirSync(`${root}/packages/calc/src`, { recursive: true })
    .map((name) => `/packages/calc/src/${name}`)
    .filter((file) => file.endsWith('.ts') && file.includes(part) && !NO_FORMULAS.some((none) => file.includes(none)));
  // The simulation's tests are the slow ones: last.
  const slow = (file) => Number(file.includes('/simulation/'));
  const inOrder = files.sort((a, b) => slow(a) - slow(b) || a.localeCompare(b));
  return inOrder.flatMap((file) => {
    const source = readFileSync(`${root}${file}`, 'utf8');
    return formulaNumbers(source).map((number) => {
      const code = source.split('\n')[number.line - 1].trim();
      const one = EQUIVALENT.find(
        (each) =>
          file.endsWith(each.file) && code === each.code && (each.numbers ?? [number.text]).includes(number.text),
      );
      return { file, code, one, why: one?.why, ...number };
    });
  });
}

/** A process that says of each change whether a test notices; a new one where the old one had to be ended. */
function asker() {
  let child;
  const answerOf = (message) =>
    new Promise((done, fail) => {
      const endless = setTimeout(() => child.kill('SIGKILL'), ENDLESS_MS);
      const onExit = (_code, signal) => {
        child = undefined;
        clearTimeout(endless);
        if (signal === 'SIGKILL') done({ caught: true });
        else fail(new Error('A process of the mutation run ended by itself.'));
      };
      child.once('exit', onExit);
      child.once('message', (answer) => {
        clearTimeout(endless);
        child.off('exit', onExit);
        done(answer);
      });
      if (message !== undefined) child.send(message);
    });
  return {
    async ask(change) {
      if (child === undefined) {
        child = fork(worker, { cwd: root, stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
        await answerOf(undefined);
      }
      return answerOf(change);
    },
    end: () => child?.kill(),
  };
}

const testsOf = await learn();
const numbers = numbersToChange();
const allowed = numbers.filter(({ why }) => why !== undefined);
const waiting = numbers.filter(({ why }) => why === undefined);
const all = waiting.length;
const survived = [];
/** Numbers of each file that are still to be asked for, so that a long run says how far it is. */
const left = new Map();
for (const { file } of waiting) left.set(file, (left.get(file) ?? 0) + 1);
function done({ file }) {
  left.set(file, left.get(file) - 1);
  if (left.get(file) > 0) return;
  const lost = survived.filter((one) => one.file === file).length;
  console.log(`${lost === 0 ? 'caught  ' : 'see above'}  ${file}`);
}
await Promise.all(
  Array.from({ length: AT_ONCE }, async () => {
    const { ask, end } = asker();
    const every = testsOf.get('') ?? [];
    // Without any change the open vitest must agree with the first run.
    if ((await ask({ file: '', start: 0, tests: every.slice(0, 5) })).caught) throw new Error('The tests disagree.');
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const { file, start, line, text, code } = next;
      const { caught } = await ask({ file, start, tests: testsOf.get(file) ?? every });
      if (!caught) {
        survived.push(next);
        console.log(`SURVIVED  ${file}:${line}  ${text}  ${code}`);
      }
      done(next);
    }
    end();
  }),
);
for (const { file, line, text, why } of allowed) console.log(`left out  ${file}:${line}  ${text}  ${why}`);
const stale = EQUIVALENT.filter((each) => !allowed.some(({ one }) => one === each));
if (part === '' && stale.length > 0) {
  throw new Error(`${stale[0].file} has no line "${stale[0].code}" any more: take it off calc-equivalent.mjs.`);
}
console.log(
  `\n${all - survived.length} of ${all} changed numbers were caught; ${allowed.length} left out as equivalent.`,
);
if (all === 0 || survived.length > 0) process.exitCode = 1;
