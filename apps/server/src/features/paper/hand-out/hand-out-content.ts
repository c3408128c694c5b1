import { type PlanContent, planOf } from '../joint-sheet/sheet-plan.ts';
import { type SequenceLine, sequenceFor } from '../joint-sheet/sheet-sequence.ts';
import { fill, type PaperLanguage, type SheetTexts, sheetTexts } from '../texts/sheet-texts.ts';
import type { HandOutSource } from './load-hand-out.ts';
import { LOW_PERCENT, type SkippedPattern, skippedPattern } from './skipped-pattern.ts';

/** The hand-out of a pre-job talk as it will be printed: words and numbers, no layout. */
export interface HandOutContent {
  readonly language: PaperLanguage;
  readonly recordedAt: string;
  readonly heading: string;
  readonly site: string;
  readonly appliesTo: string;
  readonly banner: { readonly heading: string; readonly text: string } | null;
  readonly numbering: string;
  readonly how: string;
  readonly lubricant: string;
  readonly passes: readonly string[];
  readonly orderTitle: string;
  readonly lines: readonly SequenceLine[];
  readonly notes: readonly string[];
  readonly plan: PlanContent;
  readonly planTag: string;
  /** loads where the pattern is skipped and where it is kept; null where no flange of the tables stands for it */
  readonly skipped: SkippedContent | null;
  readonly cautions: readonly string[];
}

export interface SkippedContent {
  readonly pattern: SkippedPattern;
  readonly once: string;
  readonly kept: string;
  readonly even: string | null;
  readonly caveat: string;
}

function bannerOf({ procedure }: HandOutSource, { handOut }: SheetTexts): HandOutContent['banner'] {
  if (!procedure.approved) return { heading: handOut.draft, text: handOut.draftText };
  return procedure.superseded ? { heading: handOut.superseded, text: handOut.supersededText } : null;
}

/** What the hand-out says; no torque: set values belong to a joint and stand on its sheet. */
export function handOutContent(source: HandOutSource, language: PaperLanguage = 'en'): HandOutContent {
  const texts = sheetTexts(language);
  const { handOut, words, facts } = texts;
  const { procedure, lubricant, bolts } = source;
  const { content } = procedure;
  const found = sequenceFor(content, bolts, content.relaxationPass, texts);
  const sequence = 'sequence' in found ? found : null;
  const heading = fill(facts.procedureLine, {
    code: procedure.code,
    revision: procedure.revision,
    title: procedure.title,
  });
  return {
    language,
    recordedAt: source.recordedAt,
    heading,
    site: source.site,
    appliesTo: fill(handOut.appliesTo, { least: content.appliesTo.leastBolts, most: content.appliesTo.mostBolts }),
    banner: bannerOf(source, texts),
    numbering: words.numbering[content.numbering],
    how: `${words.pattern[content.pattern]} · ${fill(facts.toolsAtOnce, { method: words.method[content.method], tools: content.tools })}`,
    lubricant: lubricant
      ? `${lubricant.name} · ${fill(facts.nutFactorLine, { factor: texts.figures.plain(lubricant.nutFactor), source: lubricant.source })}`
      : texts.notEntered,
    passes: [
      ...content.passPercents.map((percent, index) =>
        fill(handOut.passLine, { number: index + 1, percent: texts.figures.plain(percent) }),
      ),
      ...(content.finalRound ? [handOut.finalLine] : []),
      content.relaxationPass ? handOut.relaxationLine : handOut.noRelaxationLine,
    ],
    orderTitle: fill(handOut.order, { count: bolts }),
    lines: sequence?.lines ?? [],
    notes: [...(content.tools > 1 ? [texts.sequence.tools] : []), ...(sequence?.cautions ?? [])],
    plan: planOf(
      {
        tag: procedure.code,
        count: bolts,
        group: content.group,
        sequence,
        missing: 'refused' in found ? found.refused : null,
      },
      texts,
    ),
    planTag: fill(handOut.example, { count: bolts }),
    skipped: skippedContent(skippedPattern(content, bolts), texts),
    cautions: content.cautions,
  };
}

/** Points of the lowest load that the picture must differ by to be called a difference: the band of gasket data. */
const EQUAL_WITHIN = 10;

function skippedContent(
  pattern: SkippedPattern | null,
  { figures, handOut, words }: SheetTexts,
): SkippedContent | null {
  if (!pattern) return null;
  const { standard, size, rating, family, boltStress_MPa, skipped, kept } = pattern;
  const lowest = (loads: readonly number[]) => Math.min(...loads);
  const line = (text: string, loads: readonly number[]) =>
    fill(text, { low: Math.round(lowest(loads)), high: Math.round(Math.max(...loads)) });
  return {
    pattern,
    once: line(handOut.skippedOnce, skipped),
    kept: line(handOut.skippedKept, kept),
    even: lowest(kept) - lowest(skipped) < EQUAL_WITHIN ? handOut.skippedEven : null,
    caveat: fill(handOut.skippedCaveat, {
      limit: LOW_PERCENT,
      standard: standard.replace('-', ' '),
      size: size.replace(/^([A-Z]+)(?=\d)/, '$1 '),
      rating: rating.replace(/^(PN)(?=\d)/, '$1 ').replace(/^(?=\d)/, 'class '),
      family: words.family[family as keyof typeof words.family] ?? family,
      stress: figures.printed(boltStress_MPa),
    }),
  };
}
