import { CalcRefusal, faceLimits, findGasketDimensions, SHAFT_MOVEMENT_LIMIT_MM } from '@seatwell/calc';
import type { Payload } from '@seatwell/contract';
import { alignmentLimits, demandedLevel, gasketOf } from '@seatwell/workflow';
import { fill, type SheetTexts } from '../texts/sheet-texts.ts';
import { gasketsOf } from './sheet-facts.ts';
import type { PlanContent } from './sheet-plan.ts';
import type { SheetSource } from './sheet-source.ts';
import { relaxationWanted } from './sheet-target.ts';

export interface ReadingBox {
  readonly name: string;
  readonly limit: string;
}

export interface SheetBoxes {
  readonly readings: readonly ReadingBox[];
  readonly sources: string;
  /** the four bolts at which the gap is measured, or places where no numbering is agreed */
  readonly gapPlaces: readonly string[];
}

/** Flatness that the faces must keep for this gasket; null where its seating width is not known. */
function flatness({ joint, make }: SheetSource, { figures }: SheetTexts): { text: string; source: string } | null {
  const gasket = gasketOf(joint, make);
  const { standard, size, rating } = joint.specification.flange;
  try {
    const own = gasket.contactInside_mm !== null && gasket.contactOutside_mm !== null ? gasket : null;
    const contact = own ?? findGasketDimensions({ standard, size, rating, family: gasket.family });
    if (!contact) return null;
    const seatingWidth_mm = ((contact.contactOutside_mm ?? 0) - (contact.contactInside_mm ?? 0)) / 2;
    const limits = faceLimits({ gasketFamily: gasket.family, seatingWidth_mm });
    return { text: figures.gap(limits.flatness_mm), source: limits.source };
  } catch (error) {
    if (error instanceof CalcRefusal) return null;
    throw error;
  }
}

function gapPlaces({ bolts }: PlanContent, boxes: SheetTexts['boxes']): readonly string[] {
  if (bolts.length === 0) return boxes.gapPlaceUnnumbered;
  return [0, 1, 2, 3].map((quarter) => {
    const place = Math.round((quarter * bolts.length) / 4) + 1;
    const label = bolts.find(({ clockwiseIndex }) => clockwiseIndex === place)?.label ?? place;
    return fill(boxes.gapPlace, { label });
  });
}

/** Alignment readings with their limits; a machine nozzle has its own, tighter ones. */
export function sheetBoxes(source: SheetSource, plan: PlanContent, texts: SheetTexts): SheetBoxes {
  const { boxes, figures } = texts;
  const { joint, make, settings } = source;
  const nozzle = joint.kind === 'machine-nozzle';
  const alignment = { parallelism_mm: 0, offset_mm: 0, rotation_mm: 0, pullIn_percent: 0, gaps_mm: [] };
  const limits = alignmentLimits({ alignment } as unknown as Payload<'nipped-up'>, { joint, make, settings });
  const [parallelism, offset, rotation, pullIn] = limits.map(({ limit }) => limit);
  const outsideKnown = gasketOf(joint, make).contactOutside_mm !== null;
  const flat = flatness(source, texts);
  const mm = (value: number | undefined) => (value === undefined ? '' : figures.gap(value));
  const readings: ReadingBox[] = [
    { name: boxes.parallelism, limit: nozzle && !outsideKnown ? boxes.unknownOutside : mm(parallelism) },
    { name: boxes.offset, limit: mm(offset) },
    { name: boxes.rotation, limit: mm(rotation) },
    { name: boxes.pullIn, limit: pullIn === undefined ? '' : `${figures.plain(pullIn)} ${boxes.pullInUnit}` },
  ];
  if (flat) readings.push({ name: boxes.flatness, limit: flat.text });
  if (nozzle) readings.push({ name: boxes.shaft, limit: mm(SHAFT_MOVEMENT_LIMIT_MM) });
  const sources = [settings.alignment.source, flat?.source, nozzle ? boxes.machineSource : undefined];
  return {
    readings,
    gapPlaces: gapPlaces(plan, boxes),
    sources: fill(boxes.source, { source: sources.filter((each) => each !== undefined).join('; ') }),
  };
}

/** What is signed on the sheet, in the order of the work. */
export function signOffSteps(source: SheetSource, { signOff, words }: SheetTexts): string[] {
  const { joint, make, settings, procedure } = source;
  const gaskets = gasketsOf(source);
  const each = (count: number, text: string) =>
    Array.from({ length: count }, (_, index) => fill(text, { number: index + 1, count }));
  return [
    signOff.zeroEnergy,
    ...each(gaskets * 2, signOff.faces),
    signOff.bolting,
    ...each(gaskets, signOff.gasket),
    signOff.aligned,
    signOff.nippedUp,
    ...(procedure?.content.finalRound === false ? [] : [signOff.finalRound]),
    ...(relaxationWanted(source) ? [signOff.relaxation] : []),
    fill(signOff.check, { level: words.checking[demandedLevel(joint, make, settings)] }),
    ...(settings.criticalities[joint.criticality].witnessPoint ? [signOff.witness] : []),
  ];
}
