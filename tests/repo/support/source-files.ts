import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const repositoryRoot = fileURLToPath(new URL('../../..', import.meta.url)).replace(/\/$/, '');

/** TypeScript files below a folder of the repository, tests and generated code left out. */
export const sourceFiles = (folder: string): string[] =>
  readdirSync(join(repositoryRoot, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name) && !/\.test\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((file) => !file.includes('/generated/'))
    .sort();
