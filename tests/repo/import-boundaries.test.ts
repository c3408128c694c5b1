import { readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { repositoryRoot, sourceFiles } from './support/source-files.ts';

interface Boundary {
  readonly folder: string;
  readonly why: string;
  /** packages from npm or node that files of this folder may import */
  readonly mayImport: RegExp;
  /** folders of the repository that they may reach by a relative path */
  readonly mayReach: readonly string[];
}

const BOUNDARIES: readonly Boundary[] = [
  {
    folder: 'packages/calc/src',
    why: 'the calculation is pure and depends on nothing',
    mayImport: /^$/,
    mayReach: ['packages/calc/src'],
  },
  {
    folder: 'packages/workflow/src',
    why: 'the rules are pure: types of the contract, and nothing else',
    mayImport: /^@seatwell\/contract$/,
    mayReach: ['packages/workflow/src'],
  },
  {
    folder: 'packages/contract/src',
    why: 'the contract is zod and nothing else',
    mayImport: /^zod$/,
    mayReach: ['packages/contract/src'],
  },
  {
    folder: 'apps/web/src',
    why: 'the web app talks to the server over the API only',
    mayImport: /^(?!node:|pg$|fastify|@prisma)/,
    mayReach: ['apps/web/src'],
  },
  {
    folder: 'apps/server/src',
    why: 'the server never imports the web app or tests',
    mayImport: /^(?!react|@tanstack)/,
    mayReach: ['apps/server/src', 'prisma/demo'],
  },
];

const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s[^'"]*?from\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)|(?:^|\n)\s*import\s*['"]([^'"]+)['"]/g;

const importsOf = (text: string): string[] =>
  [...text.matchAll(IMPORT)].map((match) => match[1] ?? match[2] ?? match[3] ?? '');

/** Imports of a type only leave nothing in the built code; the rules may name the contract's types that way. */
function breaches(boundary: Boundary): string[] {
  return sourceFiles(boundary.folder).flatMap((file) =>
    importsOf(readFileSync(file, 'utf8')).flatMap((target) => {
      if (!target.startsWith('.'))
        return boundary.mayImport.test(target) ? [] : [`${relative(repositoryRoot, file)} imports ${target}`];
      const reached = relative(repositoryRoot, normalize(join(dirname(file), target)));
      const inside = boundary.mayReach.some((folder) => reached.startsWith(`${folder}/`) || reached === folder);
      return inside ? [] : [`${relative(repositoryRoot, file)} reaches ${reached}`];
    }),
  );
}

describe('import boundaries', () => {
  it.each(BOUNDARIES)('$folder: $why', (boundary) => {
    const files = sourceFiles(boundary.folder);
    expect(files.length).toBeGreaterThan(5);
    expect(breaches(boundary)).toEqual([]);
  });

  it('find a breach where there is one', () => {
    expect(
      importsOf("import { readFileSync } from 'node:fs';\nimport type { A } from '../b.ts';\nconst c = import('pg');"),
    ).toEqual(['node:fs', '../b.ts', 'pg']);
  });

  it('no clock, no chance and no environment in the pure packages', () => {
    const impure = /\bDate\.now\(|new Date\(\)|Math\.random\(|process\.env|\bfetch\(|localStorage/;
    const found = ['packages/calc/src', 'packages/workflow/src', 'packages/contract/src']
      .flatMap((folder) => sourceFiles(folder))
      .filter((file) => impure.test(readFileSync(file, 'utf8')));
    expect(found.map((file) => relative(repositoryRoot, file))).toEqual([]);
  });
});
