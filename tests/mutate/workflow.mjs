// Each rule of packages/workflow is removed in turn: its own test must notice. Prints a table and fails when a removal
// survives. The source stays as it is: the rule is taken out while the module loads (workflow.vitest.config.ts).
import { spawn } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const AT_ONCE = 2;

/** The suite with one rule removed ('' = none): every test with its outcome. */
async function runWithout(rule, folder, number) {
  const outputFile = join(folder, `${number}.json`);
  const args = [
    'node_modules/vitest/vitest.mjs',
    'run',
    '--config',
    'tests/mutate/workflow.vitest.config.ts',
    '--reporter=json',
    `--outputFile=${outputFile}`,
  ];
  await new Promise((done, fail) => {
    const child = spawn(process.execPath, args, { cwd: root, env: { ...process.env, RULE: rule }, stdio: 'ignore' });
    child.on('error', fail);
    child.on('exit', done);
  });
  const { testResults } = JSON.parse(await readFile(outputFile, 'utf8'));
  const tests = testResults.flatMap((file) => file.assertionResults);
  if (tests.length === 0) throw new Error(`The suite did not run without ${rule || 'any removal'}.`);
  return tests;
}

const folder = await mkdtemp(join(tmpdir(), 'mutate-'));
try {
  const sound = await runWithout('', folder, 0);
  const broken = sound.filter(({ status }) => status !== 'passed');
  if (broken.length > 0) throw new Error(`Tests fail before any rule is removed: ${broken[0].fullName}`);
  const rules = [...new Set(sound.flatMap(({ ancestorTitles }) => /^rule (\S+)$/.exec(ancestorTitles[0])?.[1] ?? []))];

  const waiting = rules.map((rule, index) => ({ rule, number: index + 1 }));
  const survived = [];
  await Promise.all(
    Array.from({ length: AT_ONCE }, async () => {
      for (let next = waiting.shift(); next; next = waiting.shift()) {
        const tests = await runWithout(next.rule, folder, next.number);
        const own = tests.find((t) => t.status === 'failed' && t.ancestorTitles[0] === `rule ${next.rule}`);
        if (!own) survived.push(next.rule);
        console.log(`${own ? 'caught  ' : 'SURVIVED'}  ${next.rule.padEnd(44)} ${own ? own.fullName : ''}`);
      }
    }),
  );
  console.log(`\n${rules.length - survived.length} of ${rules.length} removed rules were caught.`);
  if (rules.length === 0 || survived.length > 0) process.exitCode = 1;
} finally {
  await rm(folder, { recursive: true, force: true });
}
