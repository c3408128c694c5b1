import { dayOf } from '@seatwell/workflow';
import { qrSvg } from '../qr-svg.ts';
import { type PaperLanguage, sheetTexts } from '../texts/sheet-texts.ts';
import { documentData } from '../typesetting/document-data.ts';
import { type TypesetPdf, typeset } from '../typesetting/typesetter.ts';
import { curveSvg } from './curve-svg.ts';
import type { ReportSource } from './load-report.ts';
import { reportContent } from './report-content.ts';
import { REPORT_TEMPLATE } from './report-template.ts';

/** The progress report on one page. */
export async function reportPdf(source: ReportSource, language: PaperLanguage = 'en'): Promise<TypesetPdf> {
  const content = reportContent(source, language);
  const { product, page, report, figures } = sheetTexts(language);
  const { curve, now, shutdown } = source.today;
  return typeset({
    tagged: true,
    template: REPORT_TEMPLATE,
    data: documentData(language, content.recordedAt, {
      ...content,
      title: report.title,
      labels: { product, page, report },
      qr: await qrSvg(content.address),
      curveSvg: curveSvg(curve, dayOf(now, shutdown.timeZone), figures),
    }),
  });
}
