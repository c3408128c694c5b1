import { qrSvg } from '../qr-svg.ts';
import { type PaperLanguage, sheetTexts } from '../texts/sheet-texts.ts';
import { documentData } from '../typesetting/document-data.ts';
import { type TypesetPdf, typeset } from '../typesetting/typesetter.ts';
import { handOverContent } from './hand-over-content.ts';
import { HAND_OVER_TEMPLATE } from './hand-over-template.ts';
import type { HandOverSource } from './load-hand-over.ts';

/** The hand-over list of a system. */
export async function handOverPdf(source: HandOverSource, language: PaperLanguage = 'en'): Promise<TypesetPdf> {
  const content = handOverContent(source, language);
  const { product, page, safety, handOver } = sheetTexts(language);
  return typeset({
    tagged: true,
    template: HAND_OVER_TEMPLATE,
    data: documentData(language, content.recordedAt, {
      ...content,
      title: content.heading,
      labels: { product, page, safety, handOver },
      qr: await qrSvg(content.address),
    }),
  });
}
