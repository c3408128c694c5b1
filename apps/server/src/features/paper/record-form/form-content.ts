import { gasketOf, hasReached } from '@seatwell/workflow';
import type { SheetBanner } from '../joint-sheet/sheet-banners.ts';
import { sheetBoxes } from '../joint-sheet/sheet-boxes.ts';
import { sheetContent } from '../joint-sheet/sheet-content.ts';
import { gasketsOf } from '../joint-sheet/sheet-facts.ts';
import type { SheetSource } from '../joint-sheet/sheet-source.ts';
import type { PaperUnits } from '../paper-figures.ts';
import { type BannerCode, fill, type PaperLanguage, sheetTexts } from '../texts/sheet-texts.ts';

/** A pass of the form, with its set value as the joint sheet has it. */
export interface FormPass {
  readonly name: string;
  readonly wanted: string;
}

/** The record form of a joint: what is known is printed, what is done is written in by hand. */
export interface FormContent {
  readonly recordedAt: string;
  readonly tag: string;
  readonly head: string;
  readonly version: string;
  readonly address: string;
  readonly studs: string;
  readonly looked: readonly string[];
  readonly banners: readonly SheetBanner[];
  readonly cautions: readonly string[];
  /** parts of the work that the record already had when this was printed */
  readonly done: { readonly opening: boolean; readonly faces: boolean; readonly nippedUp: boolean };
  readonly faces: number;
  readonly gasketWanted: string;
  readonly readings: readonly { readonly name: string; readonly limit: string }[];
  readonly gaps: readonly string[];
  readonly passes: readonly FormPass[];
  readonly order: readonly { readonly heading: string; readonly fours: readonly string[]; readonly numbers: boolean }[];
}

const STILL_PRINTED: readonly BannerCode[] = [
  'on-hold',
  'leaking',
  'part-tight',
  'rejected',
  'retighten',
  'in-service',
  'not-final',
];

/** What the form of a joint says, from the record as it stands. */
export function formContent(
  source: SheetSource,
  language: PaperLanguage = 'en',
  units: PaperUnits = 'SI',
): FormContent {
  const texts = sheetTexts(language, units);
  const { words, plan } = texts;
  const { joint, make } = source;
  const sheet = sheetContent(source, language, units);
  const gasket = gasketOf(joint, make);
  const { flange } = joint.specification;
  const reached = (stage: 'open' | 'faces-accepted' | 'nipped-up') => hasReached(make.stage, stage);
  const { readings } = sheetBoxes(source, sheet.plan, texts);
  return {
    recordedAt: sheet.recordedAt,
    tag: joint.tag,
    head: [sheet.kind, `${words.standard[flange.standard]} ${flange.size} ${flange.rating}`, source.shutdown].join(
      ' · ',
    ),
    version: sheet.version,
    address: source.address,
    studs: joint.bolting ? `${joint.bolting.count} × ${joint.bolting.thread}` : texts.notEntered,
    looked: [sheet.plan.viewedFrom ?? plan.noViewingSide, sheet.plan.bolt1At ?? plan.noDatum],
    banners: sheet.banners.filter(({ code, withholds }) => withholds || STILL_PRINTED.includes(code)),
    cautions: sheet.cautions,
    done: { opening: reached('open'), faces: reached('faces-accepted'), nippedUp: reached('nipped-up') },
    faces: gasketsOf(source) * 2,
    gasketWanted: [`${gasketsOf(source)} × ${words.family[gasket.family]}`, gasket.detail]
      .filter((each) => each !== null)
      .join(' · '),
    readings,
    gaps: sheet.boxes.gapPlaces.map((place) => fill(texts.recordForm.gap, { unit: texts.figures.gapUnit, place })),
    passes: sheet.passes.map(({ name, torque_Nm }) => ({
      name,
      wanted: torque_Nm === texts.none ? texts.none : `${torque_Nm} N·m`,
    })),
    order: sheet.sequence.lines,
  };
}
