import type { PaperUnits } from '../paper-figures.ts';
import { qrSvg } from '../qr-svg.ts';
import { fill, type PaperLanguage, sheetTexts } from '../texts/sheet-texts.ts';
import { documentData } from '../typesetting/document-data.ts';
import { type TypesetPdf, typeset } from '../typesetting/typesetter.ts';
import type { FormContent } from './form-content.ts';
import { FORM_TEMPLATE } from './form-template.ts';

/** Record forms one after another, each with its own count of pages. @param forms at least one */
export async function formsPdf(
  forms: readonly FormContent[],
  language: PaperLanguage = 'en',
  units: PaperUnits = 'SI',
): Promise<TypesetPdf> {
  const { product, page, recordForm, safety, stop, boxes, figures } = sheetTexts(language, units);
  const latest = forms.map(({ recordedAt }) => recordedAt).sort();
  return typeset({
    tagged: false,
    template: FORM_TEMPLATE,
    data: documentData(language, latest.at(-1) ?? '', {
      title: forms.length === 1 ? (forms[0]?.tag ?? '') : `${forms[0]?.tag} – ${forms.at(-1)?.tag}`,
      labels: {
        product,
        page,
        form: { ...recordForm, flatness: fill(recordForm.flatness, { unit: figures.gapUnit }) },
        safety,
        stop,
        stopText: fill(stop.text, { who: stop.who }),
        limits: boxes.limits,
        zeroEnergy: [1, 2].map((number) => fill(recordForm.zeroEnergy, { number })),
      },
      forms: await Promise.all(forms.map(async (form) => ({ ...form, qr: await qrSvg(form.address) }))),
    }),
  });
}
