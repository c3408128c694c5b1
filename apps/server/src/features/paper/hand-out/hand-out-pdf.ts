import { planSvg } from '../joint-sheet/sheet-plan.ts';
import { type PaperLanguage, sheetTexts } from '../texts/sheet-texts.ts';
import { documentData } from '../typesetting/document-data.ts';
import { type TypesetPdf, typeset } from '../typesetting/typesetter.ts';
import { handOutContent } from './hand-out-content.ts';
import { HAND_OUT_TEMPLATE } from './hand-out-template.ts';
import type { HandOutSource } from './load-hand-out.ts';
import { skippedPatternSvgs } from './skipped-pattern-svg.ts';

const PLAN_PT = (120 * 72) / 25.4;

/** The hand-out of a pre-job talk, large print. */
export async function handOutPdf(source: HandOutSource, language: PaperLanguage = 'en'): Promise<TypesetPdf> {
  const content = handOutContent(source, language);
  const { product, page, handOut, safety, stop, plan } = sheetTexts(content.language);
  return typeset({
    tagged: true,
    template: HAND_OUT_TEMPLATE,
    data: documentData(language, content.recordedAt, {
      ...content,
      title: content.heading,
      labels: { product, page, handOut, safety, stop, notch: plan.notchTop },
      skippedSvgs:
        content.skipped === null
          ? null
          : skippedPatternSvgs(content.skipped.pattern, { skipped: content.skipped.once, kept: content.skipped.kept }),
      planSvg: content.plan.missing === null ? planSvg(content.plan, source.procedure.code, PLAN_PT) : null,
    }),
  });
}
