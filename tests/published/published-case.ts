import type { DocumentKey } from './documents.ts';

/** A number as it stands in the document, with the room that its last digit leaves. */
export interface Printed {
  readonly text: string;
  readonly value: number;
  readonly tolerance: number;
  /** Why the room is wider than the last digit, where it is. */
  readonly reason?: string;
}

/** One published example: inputs and answers as printed. */
export interface PublishedCase {
  readonly document: DocumentKey;
  /** Page, table, example. */
  readonly place: string;
  readonly inputs: string;
  /** Our answers under the names of the printed ones, in the printed units. */
  readonly compute: () => Readonly<Record<string, number>>;
  readonly printed: Readonly<Record<string, Printed>>;
  /** Rows of dimension tables are checked but not counted as answers. */
  readonly dimensionRow?: true;
}

function lastDigit(text: string): number {
  const plain = text.replace(/[\s,]/g, '');
  const [mantissa = '', exponent = '0'] = plain.toLowerCase().split('e');
  const decimals = mantissa.includes('.') ? mantissa.length - mantissa.indexOf('.') - 1 : 0;
  return 10 ** (Number(exponent) - decimals);
}

const numberOf = (text: string) => Number(text.replace(/[\s,]/g, ''));

/** A printed number; our answer may differ by one in its last digit. */
export function printed(text: string): Printed {
  return { text, value: numberOf(text), tolerance: lastDigit(text) * 1.000001 };
}

/** A printed number whose document rounds or reads charts on the way: a share of it, at least its last digit. */
export function within(text: string, share: number, reason: string): Printed {
  return {
    text,
    value: numberOf(text),
    tolerance: Math.max(Math.abs(numberOf(text)) * share, printed(text).tolerance),
    reason,
  };
}
