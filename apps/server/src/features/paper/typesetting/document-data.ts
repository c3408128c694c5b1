import { directionOf } from '@seatwell/contract';
import { isolated } from '../texts/isolate.ts';
import type { PaperLanguage } from '../texts/sheet-texts.ts';

/** Keys whose texts are for the machine: drawings, addresses, paths, and texts with places to be filled by the layout. */
const MACHINE = ['language', 'glyph', 'qr', 'planSvg', 'path', 'page', 'code', 'curveSvg', 'skippedSvgs', 'simulation'];

/** Year to second of an instant, in UTC: the date of the document. */
function documentDate(instant: string): number[] {
  const date = new Date(instant);
  return [
    date.getUTCFullYear(),
    date.getUTCMonth() + 1,
    date.getUTCDate(),
    date.getUTCHours(),
    date.getUTCMinutes(),
    date.getUTCSeconds(),
  ];
}

/**
 * Data of a document for the typesetter, with its language, direction and date.
 * @param recordedAt ISO instant of the latest record: the clock would change the bytes of the same content
 */
export const documentData = <T extends { readonly title: string; readonly labels: object }>(
  language: PaperLanguage,
  recordedAt: string,
  data: T,
): object => ({
  ...isolated(data, language, MACHINE),
  title: data.title,
  language,
  direction: directionOf(language),
  date: documentDate(recordedAt),
});
