import { gasketOf, passesStage } from '@seatwell/workflow';
import type { SheetSource } from '../joint-sheet/sheet-source.ts';
import type { PaperUnits } from '../paper-figures.ts';
import { fill, type PaperLanguage, type SheetTexts, sheetTexts } from '../texts/sheet-texts.ts';

type Step = keyof SheetTexts['tags']['steps'];
const STEPS: readonly Step[] = ['open', 'faces-accepted', 'nipped-up', 'tight', 'checked'];

/** A tag as it will be printed. It carries no set value: who tightens works to the sheet or the screen. */
export interface TagContent {
  readonly recordedAt: string;
  readonly tag: string;
  readonly kind: string;
  readonly flange: string;
  readonly studs: string;
  readonly gasket: string;
  readonly where: readonly string[];
  readonly looked: readonly string[];
  readonly warning: string | null;
  readonly address: string;
  /** stubs of the steps that this work scope passes */
  readonly stubs: readonly string[];
}

/** What the tag of a joint says, from the record as it stands. */
export function tagContent(source: SheetSource, language: PaperLanguage = 'en', units: PaperUnits = 'SI'): TagContent {
  const { tags, facts, figures, words, notEntered } = sheetTexts(language, units);
  const { joint, make } = source;
  const { flange } = joint.specification;
  const { line, location, viewedFrom, bolt1At } = joint.whereabouts;
  const gasket = gasketOf(joint, make);
  const sizes = { standard: words.standard[flange.standard], size: flange.size, rating: flange.rating };
  const bolting = joint.bolting;
  const present = (parts: readonly (string | null)[]) => parts.filter((part) => part !== null);
  return {
    recordedAt: make.lastEventAt ?? make.stageSince ?? source.printedAt,
    tag: joint.tag,
    kind: words.kind[joint.kind],
    flange: fill(flange.standard.startsWith('ASME') ? facts.flangeLine : facts.flangeLineEn, sizes),
    studs: bolting
      ? present([
          fill(tags.studs, { count: bolting.count, thread: bolting.thread }),
          bolting.length_mm === null ? null : figures.studLength(bolting.length_mm),
          bolting.grade,
        ]).join(' · ')
      : `${facts.studs}: ${notEntered}`,
    gasket: words.family[gasket.family],
    where: present([source.area, source.system, line, location]),
    looked: present([
      viewedFrom === null ? null : fill(tags.seenFrom, { side: viewedFrom }),
      bolt1At === null ? null : fill(tags.bolt1, { place: bolt1At }),
    ]),
    warning: make.purpose === 'final' ? null : fill(tags.notFinal, { purpose: words.purpose[make.purpose] }),
    address: source.address,
    stubs: STEPS.filter((step) => passesStage(make.workScope, step)).map((step) => tags.steps[step]),
  };
}
