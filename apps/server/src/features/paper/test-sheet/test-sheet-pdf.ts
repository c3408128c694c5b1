import type { PaperUnits } from '../paper-figures.ts';
import { qrSvg } from '../qr-svg.ts';
import { fill, type PaperLanguage, sheetTexts } from '../texts/sheet-texts.ts';
import { documentData } from '../typesetting/document-data.ts';
import { type TypesetPdf, typeset } from '../typesetting/typesetter.ts';
import type { TestSheetSource } from './load-test-sheet.ts';
import { testContent } from './test-content.ts';
import { TEST_TEMPLATE } from './test-template.ts';

/** The sheet of a test pack. */
export async function testSheetPdf(
  source: TestSheetSource,
  language: PaperLanguage = 'en',
  units: PaperUnits = 'SI',
): Promise<TypesetPdf> {
  const content = testContent(source, language, units);
  const { product, page, safety, testSheet, figures } = sheetTexts(language, units);
  return typeset({
    tagged: true,
    template: TEST_TEMPLATE,
    data: documentData(language, content.recordedAt, {
      ...content,
      title: content.number,
      labels: {
        product,
        page,
        safety,
        testSheet: { ...testSheet, temperature: fill(testSheet.temperature, { unit: figures.temperatureUnit }) },
      },
      qr: await qrSvg(content.address),
    }),
  });
}
