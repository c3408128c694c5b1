import { drawingPalettes, stageGlyphSvg } from '@seatwell/workflow';
import { qrSvg } from '../qr-svg.ts';
import { fill, sheetTexts } from '../texts/sheet-texts.ts';
import { documentData } from '../typesetting/document-data.ts';
import { type Typescript, type TypesetPdf, typeset } from '../typesetting/typesetter.ts';
import type { SheetContent } from './sheet-content.ts';
import { planSvg } from './sheet-plan.ts';
import { SHEET_TEMPLATE } from './sheet-template.ts';

const MM_PT = 72 / 25.4;
const PLAN_BESIDE_FACTS_MM = 88;
const PLAN_ON_OWN_PAGE_MM = 172;
/** Cautions of a procedure up to this length keep on one page with the values; longer ones may break. */
const LONGEST_CAUTIONS = 1500;

/** One sheet to be read anywhere has the structure that screen readers need; a batch goes to the printer. */
export type SheetUse = 'single' | 'batch';

/** A picture of the sheets by its hash. */
export type Photos = ReadonlyMap<string, Uint8Array>;

const photoPath = (hash: string) => `/photo-${hash}.jpg`;

async function setSheet(content: SheetContent, photos: Photos) {
  const width_mm = content.plan.ownPage ? PLAN_ON_OWN_PAGE_MM : PLAN_BESIDE_FACTS_MM;
  return {
    ...content,
    cautionsFit: content.cautions.join('').length < LONGEST_CAUTIONS,
    glyph: stageGlyphSvg(content.stage, { size: 48, palette: drawingPalettes.print }),
    qr: await qrSvg(content.address),
    planSvg: content.plan.missing === null ? planSvg(content.plan, content.tag, width_mm * MM_PT) : null,
    photo:
      content.photo !== null && photos.has(content.photo.hash)
        ? { path: photoPath(content.photo.hash), caption: content.photo.caption }
        : null,
  };
}

/** Words of the template that no sheet has of its own. */
function labels({ language, units }: SheetContent) {
  const texts = sheetTexts(language, units);
  const { product, title, page, passes, sequence, boxes, signOff, stop, safety } = texts;
  const stopText = fill(stop.text, { who: stop.who });
  return {
    product,
    title,
    page,
    passes,
    sequence,
    boxes: { ...boxes, gaps: fill(boxes.gaps, { unit: texts.figures.gapUnit }) },
    signOff,
    stop,
    safety,
    stopText,
    planOnOwnPage: texts.plan.onOwnPage,
  };
}

/**
 * Joint sheets one after another as one document, pages counted per sheet: what the typesetter is given.
 * @param contents at least one; all in the language of the first
 */
export async function sheetsDocument(
  contents: readonly SheetContent[],
  photos: Photos,
  use: SheetUse = 'single',
): Promise<Typescript> {
  const [first] = contents;
  if (!first) throw new Error('No joint sheet was asked for; name at least one joint.');
  const sheets = await Promise.all(contents.map((content) => setSheet(content, photos)));
  const latest =
    contents
      .map(({ recordedAt }) => recordedAt)
      .sort()
      .at(-1) ?? first.recordedAt;
  const used = new Set(contents.flatMap(({ photo }) => (photo !== null && photos.has(photo.hash) ? [photo.hash] : [])));
  return {
    tagged: use === 'single',
    template: SHEET_TEMPLATE,
    data: documentData(first.language, latest, {
      title: contents.length === 1 ? first.tag : `${first.tag} – ${contents.at(-1)?.tag}`,
      labels: labels(first),
      sheets,
    }),
    pictures: [...used].map((hash) => ({ path: photoPath(hash), bytes: photos.get(hash) ?? new Uint8Array() })),
  };
}

/** Sets joint sheets in one PDF, off the thread that answers requests. */
export const sheetsPdf = async (
  contents: readonly SheetContent[],
  photos: Photos,
  use: SheetUse = 'single',
): Promise<TypesetPdf> => typeset(await sheetsDocument(contents, photos, use));
