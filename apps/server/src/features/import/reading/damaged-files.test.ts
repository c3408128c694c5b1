import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { sampleRegister } from '../../../../../../tests/browser/support/sample-register.ts';
import { fileKind } from './file-kind.ts';
import { readCsv } from './read-csv.ts';
import { listXlsx, readXlsx } from './read-xlsx.ts';
import { ReadingRefusal, readingLimits } from './reading-result.ts';
import { workbookParts, zipOf } from './zip-for-tests.ts';

/** Reads without a worker: what must never happen here is an error that is no refusal. */
async function outcome(bytes: Buffer, sheet: string): Promise<'read' | 'refused'> {
  try {
    if (fileKind(bytes, readingLimits) === 'csv') readCsv('x', bytes, readingLimits);
    else {
      listXlsx(bytes, readingLimits);
      await readXlsx(bytes, sheet, readingLimits);
    }
    return 'read';
  } catch (error) {
    if (error instanceof ReadingRefusal) return 'refused';
    throw error;
  }
}

describe('damaged files end in a reading or in a refusal with a reason', () => {
  let sample: Buffer;
  beforeAll(async () => {
    sample = Buffer.from((await sampleRegister()).bytes);
  });

  it('a workbook with bytes changed anywhere', async () => {
    const seen = { read: 0, refused: 0 };
    const changes = fc.array(fc.tuple(fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(changes, async (places) => {
        const changed = Buffer.from(sample);
        for (const [place, value] of places) changed[place % changed.length] = value;
        seen[await outcome(changed, 'Joints')]++;
      }),
      { numRuns: 150 },
    );
    expect(seen.refused).toBeGreaterThan(10);
  });
  it('a workbook cut off anywhere', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 4, max: sample.length - 1 }), async (length) => {
        expect(await outcome(sample.subarray(0, length), 'Joints')).toBe('refused');
      }),
      { numRuns: 100 },
    );
  });
  it('a sheet of XML fragments in any order', async () => {
    const fragment = fc.constantFrom(
      '<sheetData>',
      '</sheetData>',
      '<row r="1">',
      '<row>',
      '</row>',
      '<c r="A1">',
      '<c r="B2" t="s">',
      '<c t="n">',
      '<c r="?" t="x">',
      '</c>',
      '<v>',
      '7',
      '</v>',
      '<f>',
      '&#x1;',
      '&amp',
      '<![CDATA[',
      '<!--',
      '<mergeCell ref="A1:B2"/>',
    );
    await fc.assert(
      fc.asyncProperty(fc.array(fragment, { maxLength: 25 }), async (fragments) => {
        expect(['read', 'refused']).toContain(await outcome(zipOf(workbookParts(fragments.join(''))), 'Register'));
      }),
      { numRuns: 200 },
    );
  });
  it('text of any kind', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.stringMatching(/^[a-z0-9",;\t\r\n]{0,80}$/)),
        async (text) => {
          expect(['read', 'refused']).toContain(await outcome(Buffer.from(text), 'x'));
        },
      ),
      { numRuns: 300 },
    );
  });
});
