// Holds one vitest open and answers for one changed number after another whether a test notices. A process of its own,
// so that the runner can end it when a change makes a loop endless.
import { fileURLToPath } from 'node:url';
import { createVitest } from 'vitest/node';
import { changed } from './calc-numbers.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');
let mutation = { file: '', start: 0 };

/** Changes the number while its module loads; the source stays as it is. */
const changeOneNumber = {
  name: 'change-one-number',
  enforce: 'pre',
  transform(code, id) {
    if (mutation.file === '' || !id.endsWith(mutation.file)) return null;
    return { code: changed(code, mutation.start), map: null };
  },
};

const config = `${root}/tests/mutate/calc.vitest.config.ts`;
const vitest = await createVitest('test', { config, watch: false, reporters: [{}] }, { plugins: [changeOneNumber] });
const specifications = await vitest.globTestSpecifications();

process.on('message', async ({ file, start, tests }) => {
  // The module changed before is itself again, the one asked for now is changed.
  for (const name of new Set([mutation.file, file])) if (name !== '') vitest.invalidateFile(`${root}${name}`);
  mutation = { file, start };
  const asked = tests.flatMap((test) => specifications.filter(({ moduleId }) => moduleId.endsWith(test)));
  vitest.state.clearFiles(vitest.projects[0]);
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(asked);
  const own = testModules.filter(({ moduleId }) => asked.some((one) => one.moduleId === moduleId));
  if (own.length !== asked.length) throw new Error(`${asked.length} test files were asked for, ${own.length} ran.`);
  process.send({ caught: unhandledErrors.length > 0 || own.some((one) => one.state() === 'failed') });
});
process.send('ready');
