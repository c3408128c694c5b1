import { qrSvg } from '../../sheets/qr-svg.ts';
import { type PaperLanguage, sheetTexts } from '../../sheets/texts/sheet-texts.ts';
import { documentData } from '../../sheets/typesetting/document-data.ts';
import { type TypesetPdf, typeset } from '../../sheets/typesetting/typesetter.ts';
import type { TestSheetSource } from './load-test-sheet.ts';
import { testContent } from './test-content.ts';
import { TEST_TEMPLATE } from './test-template.ts';

/** The sheet of a test pack. */
export async function testSheetPdf(source: TestSheetSource, language: PaperLanguage = 'en'): Promise<TypesetPdf> {
  const content = testContent(source, language);
  const { product, page, safety, testSheet } = sheetTexts(language);
  return typeset({
    tagged: true,
    template: TEST_TEMPLATE,
    data: documentData(language, content.recordedAt, {
      ...content,
      title: content.number,
      labels: { product, page, safety, testSheet },
      qr: await qrSvg(content.address),
    }),
  });
}
