import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { repositoryRoot } from './support/source-files.ts';

const tracked = execFileSync('git', ['ls-files', '-z', '*.ts', '*.tsx', '*.mjs'], {
  cwd: repositoryRoot,
  encoding: 'utf8',
})
  .split('\0')
  .filter((file) => file !== '' && !file.startsWith('tests/repo/paths-with-spaces'));

// The pathname of a file's URL has %20 where the folder has a space: nothing is found there.
it('no file takes the path of a URL for the path of a folder', () => {
  const wrong = tracked.filter((file) =>
    /import\.meta\.url\)\.pathname/.test(readFileSync(join(repositoryRoot, file), 'utf8')),
  );
  expect(wrong).toEqual([]);
});
