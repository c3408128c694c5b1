import { qrSvg } from '../qr-svg.ts';
import { type PaperLanguage, sheetTexts } from '../texts/sheet-texts.ts';
import { documentData } from '../typesetting/document-data.ts';
import { type TypesetPdf, typeset } from '../typesetting/typesetter.ts';
import type { TagContent } from './tag-content.ts';
import { type TagGeometry, tagSize } from './tag-geometry.ts';
import { TAGS_TEMPLATE } from './tags-template.ts';

/**
 * Tags on as many sheets as they take.
 * @param tags at least one
 * @throws Problem `bad-input` for labels that are too small
 */
export async function tagsPdf(
  tags: readonly TagContent[],
  geometry: TagGeometry,
  language: PaperLanguage = 'en',
): Promise<TypesetPdf> {
  const texts = sheetTexts(language);
  const withCodes = await Promise.all(tags.map(async (tag) => ({ ...tag, qr: await qrSvg(tag.address) })));
  const latest = tags.map(({ recordedAt }) => recordedAt).sort();
  return typeset({
    tagged: false,
    template: TAGS_TEMPLATE,
    data: documentData(language, latest.at(-1) ?? '', {
      title: texts.tags.title,
      labels: { product: texts.product, page: texts.page, tags: texts.tags },
      geometry: { ...geometry, ...tagSize(geometry) },
      tags: withCodes,
    }),
  });
}
