import { gasketOf } from '@seatwell/workflow';
import type { PaperUnits } from '../paper-figures.ts';
import { fill, type PaperLanguage, type SheetTexts, sheetTexts } from '../texts/sheet-texts.ts';
import { computedLines, computedNotes } from './computed-passes.ts';
import { type SheetBanner, sheetBanners, withheld } from './sheet-banners.ts';
import { type SheetBoxes, sheetBoxes, signOffSteps } from './sheet-boxes.ts';
import { boltingFacts, flangeFacts, placeFacts, procedureFacts, type SheetSection } from './sheet-facts.ts';
import { type PlanContent, planContent } from './sheet-plan.ts';
import { type SequenceLine, sequenceFor } from './sheet-sequence.ts';
import type { SheetSource } from './sheet-source.ts';
import { relaxationWanted, type SheetPass, sheetPasses, targetFacts } from './sheet-target.ts';
import { tensionedLines, tensionedNotes } from './tensioned-passes.ts';

/** A joint sheet as it will be printed: words and numbers, no layout. Equal content gives equal bytes. */
export interface SheetContent {
  readonly language: PaperLanguage;
  readonly units: PaperUnits;
  /** ISO instant of the latest record: the date of the document, since the clock would change its bytes */
  readonly recordedAt: string;
  readonly tag: string;
  readonly stage: SheetSource['make']['stage'];
  readonly stageWord: string;
  readonly kind: string;
  readonly place: string;
  readonly version: string;
  readonly recorded: string;
  readonly address: string;
  readonly valid: boolean;
  readonly banners: readonly SheetBanner[];
  readonly facts: readonly SheetSection[];
  readonly plan: PlanContent;
  readonly target: SheetSection | null;
  readonly calculation: string | null;
  readonly passes: readonly SheetPass[];
  /** units of the two columns of set values */
  readonly setUnits: readonly [string, string];
  /** pump-driven methods have a column for the pressure */
  readonly showsPump: boolean;
  readonly passNotes: readonly string[];
  readonly sequence: { readonly lines: readonly SequenceLine[]; readonly notes: readonly string[] };
  readonly boxes: SheetBoxes;
  readonly signOff: readonly string[];
  readonly cautions: readonly string[];
  readonly photo: { readonly hash: string; readonly caption: string } | null;
}

const EPOCH = '2000-01-01T00:00:00.000Z';
const ELASTOMER_BOUND = ['fibre-sheet', 'elastomer'];

function passNotes(source: SheetSource, { passes, figures }: SheetTexts): string[] {
  const { joint, make, procedure, settings, pump } = source;
  const notes: string[] = [];
  if (procedure?.content.finalRound) notes.push(passes.finalNote);
  if (joint.specification.hotExposed && ELASTOMER_BOUND.includes(gasketOf(joint, make).family))
    notes.push(passes.neverHot);
  else if (relaxationWanted(source)) {
    const after = figures.plain(settings.relaxationPassAfter_h);
    const overdue = figures.plain(settings.relaxationPassOverdue_h);
    notes.push(fill(passes.relaxationNote, { after, overdue }));
  } else notes.push(passes.noRelaxation);
  const method = procedure?.content.method;
  if (withheld(source) === null) {
    if (pump) notes.push(fill(passes.pumpComputed, { tool: pump.toolTag, gauge: pump.gaugeTag }));
    else if (method === 'hydraulic-wrench') notes.push(passes.pumpFill);
    else if (method === 'tensioner' && !make.target?.tensioning) notes.push(passes.pumpFillTensioner);
  }
  return [...notes, passes.notClear];
}

const PHOTO_WORDS = { joint: 'photoOfJoint', found: 'photoFound', opened: 'photoOpened' } as const;

const photoOf = ({ photo }: SheetSource, { facts }: SheetTexts): SheetContent['photo'] =>
  photo === null ? null : { hash: photo.hash, caption: facts[PHOTO_WORDS[photo.of]] };

/** What a joint sheet says, from the record as it stands. Pure: the same source gives the same sheet. */
export function sheetContent(
  source: SheetSource,
  language: PaperLanguage = 'en',
  units: PaperUnits = 'SI',
): SheetContent {
  const texts = sheetTexts(language, units);
  const { joint, make, procedure, timeZone } = source;
  const relaxation = relaxationWanted(source);
  const found =
    procedure && joint.bolting ? sequenceFor(procedure.content, joint.bolting.count, relaxation, texts) : null;
  const sequence = found && 'sequence' in found ? found : null;
  const refused = found && 'refused' in found ? found.refused : null;
  const recordedAt = make.lastEventAt ?? make.stageSince ?? EPOCH;
  const plan = planContent(source, sequence, refused, texts);
  const method = procedure?.content.method;
  return {
    language,
    units,
    recordedAt,
    tag: joint.tag,
    stage: make.stage,
    stageWord: texts.words.stage[make.stage],
    kind: texts.words.kind[joint.kind],
    place: `${source.site} · ${source.shutdown}`,
    version: fill(texts.version, {
      version: joint.version,
      printed: texts.figures.localTime(source.printedAt, timeZone),
    }),
    recorded:
      recordedAt === EPOCH ? '' : fill(texts.lastRecorded, { at: texts.figures.localTime(recordedAt, timeZone) }),
    address: source.address,
    valid: withheld(source) === null,
    banners: sheetBanners(source, texts, refused),
    facts: [
      placeFacts(source, texts),
      flangeFacts(source, texts),
      boltingFacts(source, texts),
      procedureFacts(source, texts),
    ],
    plan,
    target: targetFacts(source, texts),
    calculation:
      make.target && make.target.basis !== 'makers-torque'
        ? fill(texts.calculated, { version: make.target.calcVersion })
        : null,
    passes: sheetPasses(source, sequence, texts),
    setUnits: method === 'elongation' ? ['mm', 'in'] : [texts.passes.Nm, texts.passes.ftlbf],
    showsPump: method === 'hydraulic-wrench' || method === 'tensioner',
    passNotes: [...computedNotes(source, texts), ...tensionedNotes(source, texts), ...passNotes(source, texts)],
    sequence: {
      lines: tensionedLines(source, sequence, texts) ?? computedLines(source, sequence, texts) ?? sequence?.lines ?? [],
      notes: [
        ...(sequence && procedure && procedure.content.tools > 1 ? [texts.sequence.tools] : []),
        ...(make.target?.tensioning ? [] : (sequence?.cautions ?? [])),
      ],
    },
    boxes: sheetBoxes(source, plan, texts),
    signOff: signOffSteps(source, texts),
    cautions: procedure?.content.cautions ?? [],
    photo: photoOf(source, texts),
  };
}
