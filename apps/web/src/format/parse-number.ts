/** What somebody typed, read as a number: or why it cannot be. */
export type ParsedNumber =
  | { readonly kind: 'empty' }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'not-a-number' }
  | {
      readonly kind: 'ambiguous';
      readonly readings: readonly [number, number];
    };

const vulgarFractions: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/**
 * Reads a number as people on site type it: decimal comma or point, spaces or apostrophes between
 * thousands, `1 1/8` and `1⅛`. Where a mark could be either (`1,150` on an English device, `1.150` on a
 * German one) it answers both readings: a set value wrong by a thousand must never pass silently.
 * @param entered as typed
 * @param decimalMark the decimal mark of the person's language
 */
export function parseNumber(entered: string, decimalMark: '.' | ',' = '.'): ParsedNumber {
  const trimmed = entered.trim().replace(/^[−–]/, '-');
  if (trimmed === '') return { kind: 'empty' };

  const fraction = parseFraction(trimmed);
  if (fraction !== undefined) return { kind: 'number', value: fraction };

  const compact = trimmed.replace(/(?<=\d)[\s\u00a0\u202f'’](?=\d{3}(?!\d))/g, '');
  if (!/^[+-]?(\d[\d.,]*|[.,]\d+)$/.test(compact)) return { kind: 'not-a-number' };

  const marks = compact.match(/[.,]/g) ?? [];
  const kinds = new Set(marks);
  if (marks.length === 0) return asNumber(compact);
  if (kinds.size === 2) return parseWithBothMarks(compact);
  const mark = marks[0] as '.' | ',';
  if (marks.length > 1) return isGrouped(compact, mark) ? asNumber(compact.replaceAll(mark, '')) : nothing;

  const asDecimal = Number(compact.replace(',', '.'));
  const couldBeThousands = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(compact);
  if (mark !== decimalMark && couldBeThousands) {
    return {
      kind: 'ambiguous',
      readings: [Number(compact.replace(mark, '')), asDecimal],
    };
  }
  return Number.isFinite(asDecimal) ? { kind: 'number', value: asDecimal } : nothing;
}

const nothing: ParsedNumber = { kind: 'not-a-number' };

function asNumber(digits: string): ParsedNumber {
  const value = Number(digits);
  return Number.isFinite(value) ? { kind: 'number', value } : nothing;
}

// With both marks present the last one is the decimal mark and the other must group thousands.
function parseWithBothMarks(compact: string): ParsedNumber {
  const decimal = compact.lastIndexOf('.') > compact.lastIndexOf(',') ? '.' : ',';
  const group = decimal === '.' ? ',' : '.';
  const [whole = '', part = '', ...more] = compact.split(decimal);
  if (more.length > 0 || part.includes(group) || !isGrouped(whole, group)) return nothing;
  return asNumber(`${whole.replaceAll(group, '')}.${part}`);
}

function isGrouped(digits: string, mark: '.' | ','): boolean {
  const groups = digits.replace(/^[+-]/, '').split(mark);
  return groups.every((group, index) => (index === 0 ? /^\d{1,3}$/ : /^\d{3}$/).test(group));
}

function parseFraction(entered: string): number | undefined {
  const vulgar = /^(\d+)?\s*([½¼¾⅛⅜⅝⅞])$/.exec(entered);
  if (vulgar?.[2] !== undefined) return Number(vulgar[1] ?? 0) + (vulgarFractions[vulgar[2]] ?? 0);
  const plain = /^(?:(\d+)[\s-]+)?(\d+)\s*[/⁄]\s*(\d+)$/.exec(entered);
  if (!plain) return undefined;
  const value = Number(plain[1] ?? 0) + Number(plain[2]) / Number(plain[3]);
  return Number.isFinite(value) ? value : undefined;
}
