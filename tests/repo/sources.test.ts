import { existsSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { SOURCES } from '@seatwell/calc';
import { describe, expect, it } from 'vitest';
import { repositoryRoot, sourceFiles } from './support/source-files.ts';

const calc = join(repositoryRoot, 'packages', 'calc', 'src');
const documents = Object.values(SOURCES);
const listed = documents.map((document) => document.title).join('\n');

/** A document as texts name it: ASME B16.5, VDI 2230, ISO 898-1, API 686, EN 1514-2 … */
const DESIGNATION =
  /\b(?:ASME (?:VIII-1|PCC-\d|[A-Z]\d[\d.]*)|ISO \d+(?:-\d+)?|EN \d+(?:-\d+)?|VDI \d+|API \d+|ASTM [A-F]\d+|TEMA)\b/g;
/** What needs no document. */
const OWN = /^(geometry|statics|count of the steps|site policy|entered)\b/;

const sourceTexts = sourceFiles('packages/calc/src').flatMap((file) =>
  [...readFileSync(file, 'utf8').matchAll(/source: ['"`]([^'"`$]+)['"`]/g)].map((match) => ({
    file: relative(repositoryRoot, file),
    text: match[1] ?? '',
  })),
);

/** The number of a document without its part, as a title may list it. */
const numberOf = (designation: string): string =>
  designation.replace(/^(ASME|ISO|EN|VDI|API|ASTM) /, '').replace(/-\d+$/, '');

describe('the sources of the calculation', () => {
  it('are written where formulas are', () => expect(sourceTexts.length).toBeGreaterThan(15));

  it('name documents that the list of sources holds', () => {
    const floating = sourceTexts.flatMap(({ file, text }) =>
      [...text.matchAll(DESIGNATION)]
        .map((match) => match[0])
        .filter((designation) => !listed.includes(numberOf(designation)))
        .map((designation) => `${file}: ${designation}`),
    );
    expect(floating).toEqual([]);
  });

  it('never stand empty: a source is a document or says what it rests on', () => {
    const vague = sourceTexts.filter(
      ({ text }) =>
        !OWN.test(text) &&
        !text.match(DESIGNATION) &&
        !/Handbook|Kellogg|common practice|from memory|Shigley|Hooke|estimate|harmonic/i.test(text),
    );
    expect(vague).toEqual([]);
  });

  it.each(documents.map((document) => [document.title, document] as const))(
    '%s says how it is held and where it is used',
    (_title, document) => {
      expect(document.edition.length).toBeGreaterThan(3);
      expect(document.usedIn.length).toBeGreaterThan(0);
      for (const folder of document.usedIn)
        expect(existsSync(join(calc, folder)) || existsSync(join(calc, `${folder}.ts`))).toBe(true);
    },
  );

  it('are known for each table: standard, edition and confidence stand beside it', () => {
    const tables = sourceFiles('packages/calc/src').filter(
      (file) => /\/tables\//.test(file) && /SourcedTable/.test(readFileSync(file, 'utf8')),
    );
    expect(tables.length).toBeGreaterThan(8);
    for (const file of tables) {
      const text = readFileSync(file, 'utf8');
      for (const field of ['standard:', 'confidence:']) expect(text, relative(repositoryRoot, file)).toContain(field);
    }
  });
});
