import { describe, expect, test } from 'vitest';
import { labelLines } from './label-lines.ts';

describe('a label in the target chart', () => {
  test('stays on one line where it fits', () => {
    expect(labelLines('gasket seating', 24)).toEqual(['gasket seating']);
  });

  test('is broken between words where it does not', () => {
    expect(labelLines('fluencia del perno con torsión y dispersión', 24)).toEqual([
      'fluencia del perno con',
      'torsión y dispersión',
    ]);
  });

  test('cuts no word', () => {
    expect(labelLines('Verlustausgleichsberechnung oben', 12)).toEqual(['Verlustausgleichsberechnung', 'oben']);
  });
});
