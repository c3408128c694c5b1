import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ERROR_CATALOGUE, ERROR_CODES } from '../../apps/server/src/platform/errors/catalogue.ts';
import appTexts from '../../apps/web/src/texts/en/app.json' with { type: 'json' };
import { sourceFiles } from './support/source-files.ts';

describe('the error catalogue', () => {
  it.each(ERROR_CODES)('%s has a status of an error and a title that a person can read', (code) => {
    const { status, title } = ERROR_CATALOGUE[code];
    expect(status).toBeGreaterThanOrEqual(400);
    expect(status).toBeLessThan(600);
    expect(title).toMatch(/^[A-Z].{8,}/);
    expect(title).not.toMatch(/!|_/);
  });

  it.each(ERROR_CODES)('%s is said on the screens in the same words', (code) => {
    expect(appTexts).toHaveProperty(`problem-${code}`, ERROR_CATALOGUE[code].title);
  });

  it('has no code that nothing uses', () => {
    const text = sourceFiles('apps/server/src')
      .map((file) => readFileSync(file, 'utf8'))
      .join('\n');
    const unused = ERROR_CODES.filter((code) => text.split(`'${code}'`).length - 1 < 3);
    expect(unused).toEqual([]);
  });
});
