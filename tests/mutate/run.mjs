// `npm run mutate -- workflow`: breaks the code on purpose, one place at a time, and demands that a test notices.
import { existsSync } from 'node:fs';

const [subject = ''] = process.argv.slice(2);
const file = new URL(`./${subject}.mjs`, import.meta.url);
if (!/^[a-z]+$/.test(subject) || subject === 'run' || !existsSync(file)) {
  console.error(`There is no mutation run "${subject}". Give one of those in tests/mutate: npm run mutate -- workflow`);
  process.exit(2);
}
await import(file.href);
