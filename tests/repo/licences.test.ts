import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { repositoryRoot } from './support/source-files.ts';

/** Licences under which a plant may run the product without opening its own systems or asking a lawyer. */
const ACCEPTED =
  /^\(?(MIT|MIT-0|ISC|BSD|BSD-2-Clause|BSD-3-Clause|0BSD|Apache-2\.0|BlueOak-1\.0\.0|CC0-1\.0|CC-BY-3\.0|CC-BY-4\.0|Unlicense|WTFPL|Python-2\.0|Zlib|OFL-1\.1|PostgreSQL|MPL-2\.0|LGPL-3\.0-or-later|Artistic-2\.0)( (AND|OR) [A-Za-z0-9.-]+)*\)?$/;

interface Locked {
  readonly dev?: boolean;
  /** only wanted by something that is for development, such as Prisma's command line */
  readonly devOptional?: boolean;
  readonly peer?: boolean;
  readonly link?: boolean;
  readonly optional?: boolean;
}

const lock = JSON.parse(readFileSync(join(repositoryRoot, 'package-lock.json'), 'utf8')) as {
  packages: Record<string, Locked>;
};

const licenceOf = (folder: string): string => {
  const manifest = JSON.parse(readFileSync(join(repositoryRoot, folder, 'package.json'), 'utf8')) as {
    license?: string | { type: string };
    licenses?: { type: string }[];
  };
  const { license, licenses } = manifest;
  if (typeof license === 'string') return license;
  return license?.type ?? licenses?.map((each) => each.type).join(' OR ') ?? 'none stated';
};

describe('dependencies that ship', () => {
  const shipped = Object.entries(lock.packages).filter(
    ([folder, entry]) =>
      folder.startsWith('node_modules/') &&
      !entry.dev &&
      !entry.devOptional &&
      !entry.peer &&
      !entry.link &&
      existsSync(join(repositoryRoot, folder, 'package.json')),
  );

  it('are there to be looked at', () => expect(shipped.length).toBeGreaterThan(100));

  it('have licences that a plant can accept', () => {
    const refused = shipped
      .map(([folder]) => `${folder.slice('node_modules/'.length)}: ${licenceOf(folder)}`)
      .filter((line) => !ACCEPTED.test(line.split(': ')[1] ?? ''));
    expect(refused).toEqual([]);
  });

  it('leave no copyleft licence or missing one through', () => {
    for (const licence of ['GPL-3.0', 'AGPL-3.0-only', 'none stated', 'UNLICENSED', 'SSPL-1.0'])
      expect(licence).not.toMatch(ACCEPTED);
  });
});
