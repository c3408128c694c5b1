import { describe, expect, it } from 'vitest';
import { CASES } from './cases/index.ts';
import { DOCUMENTS, type DocumentKey, type Held } from './documents.ts';

interface Count {
  readonly document: DocumentKey;
  readonly held: Held;
  readonly answers: number;
}

const cases = Object.values(CASES).flat();
const counts: readonly Count[] = Object.entries(DOCUMENTS)
  .map(([key, { held }]) => ({
    document: key as DocumentKey,
    held,
    answers: cases
      .filter((one) => one.document === key && one.dimensionRow !== true)
      .reduce((sum, one) => sum + Object.keys(one.printed).length, 0),
  }))
  .filter(({ answers }) => answers > 0);

const total = (held: Held) =>
  counts.filter((count) => count.held === held).reduce((sum, { answers }) => sum + answers, 0);

describe('what the published checks rest on', () => {
  it('prints the count of answers by document, dimension tables apart', () => {
    const lines = counts
      .toSorted((a, b) => b.answers - a.answers)
      .map(
        ({ document, held, answers }) =>
          `${String(answers).padStart(4)}  ${held.padEnd(8)}  ${DOCUMENTS[document].title}`,
      );
    const sums = `read ${total('read')}, from memory ${total('memory')}, baseline ${total('baseline')}`;
    console.log(['Published answers checked', ...lines, sums].join('\n'));
    expect(counts.length).toBeGreaterThanOrEqual(12);
  });

  it('has at least 300 answers that were read, from at least 12 documents', () => {
    expect(total('read')).toBeGreaterThanOrEqual(300);
    expect(counts.filter(({ held }) => held === 'read').length).toBeGreaterThanOrEqual(12);
  });

  it('takes no more than a quarter of the read answers from one document', () => {
    for (const { document, held, answers } of counts) {
      if (held === 'read') expect(answers / total('read'), document).toBeLessThanOrEqual(0.25);
    }
  });

  it('gives a reason wherever the tolerance is wider than the last digit', () => {
    for (const { place, printed } of cases) {
      for (const [name, { text, tolerance, reason }] of Object.entries(printed)) {
        const [, decimals = ''] = text.replace(/[\s,]/g, '').split('.');
        const lastDigit = 10 ** -decimals.length;
        if (tolerance > lastDigit * 1.001) expect(reason, `${place}: ${name}`).toBeTruthy();
      }
    }
  });
});
