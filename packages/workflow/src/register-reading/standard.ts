import { ask, type Cell, plainText, quoted, type Reading, read, refuse } from './reading.ts';

export type FlangeStandard = 'ASME-B16.5' | 'ASME-B16.47-A' | 'ASME-B16.47-B' | 'EN-1092-1';

/** The two series of ASME B16.47 as choices of a question. */
export const largeSeries = [
  { value: 'ASME-B16.47-A', label: 'series A (MSS SP-44)' },
  { value: 'ASME-B16.47-B', label: 'series B (API 605)' },
] as const;

/** Reads a flange standard: `B16.5`, `ASME B16.47 Ser. A`, `EN 1092-1`. Without series, or as `ASME` or `DIN` alone, it is asked. */
export function parseStandard(cell: Cell): Reading<FlangeStandard> {
  const text = plainText(cell).toUpperCase();
  const has = (pattern: RegExp) => pattern.test(text);
  if (text === '')
    return refuse('standard-missing', 'The flange standard is empty. Enter ASME B16.5, ASME B16.47 or EN 1092-1.');
  if (has(/B\s?16[.,]\s?47/)) {
    if (has(/(-|SER(IES|\.)?\s*|\s)A\b|SP-?\s?44/)) return read('ASME-B16.47-A');
    if (has(/(-|SER(IES|\.)?\s*|\s)B\b(?!\s?16)|API\s?605/)) return read('ASME-B16.47-B');
    return ask('standard-series', `${quoted(cell)}: which series of ASME B16.47?`, largeSeries);
  }
  if (has(/SP-?\s?44/)) return read('ASME-B16.47-A');
  if (has(/API\s?605/)) return read('ASME-B16.47-B');
  if (has(/B\s?16[.,]\s?5\b/)) return read('ASME-B16.5');
  if (has(/\bEN[\s-]?1092/)) return read('EN-1092-1');
  if (has(/^(ASME|ANSI)$/)) {
    return ask('standard-unclear', `${quoted(cell)}: which flange standard?`, [
      { value: 'ASME-B16.5', label: 'ASME B16.5' },
      ...largeSeries,
    ]);
  }
  if (has(/^(DIN|EN)\b/)) {
    return ask('standard-unclear', `${quoted(cell)}: are these flanges drilled to EN 1092-1?`, [
      { value: 'EN-1092-1', label: 'EN 1092-1' },
    ]);
  }
  return refuse(
    'standard-without-data',
    `No flange data for ${quoted(cell)} here, so that nothing can be filled in or compared. Enter bolt count and thread in the sheet.`,
  );
}
