import { CalcRefusal, type TighteningSequence, tighteningSequence } from '@seatwell/calc';
import type { ProcedureContent } from '@seatwell/contract';
import { fill, type SheetTexts } from '../texts/sheet-texts.ts';

/** A pass as it is worked: its share of the target and the fours of steps. */
export interface SequenceLine {
  readonly heading: string;
  readonly fours: readonly string[];
  /** numbers of bolts, not a sentence */
  readonly numbers: boolean;
}

export interface SheetSequence {
  readonly sequence: TighteningSequence;
  /** passes of the pattern by percent; two visits at one percent are one pass */
  readonly passes: readonly { readonly percent: number; readonly steps: readonly (readonly number[])[] }[];
  readonly lines: readonly SequenceLine[];
  readonly cautions: readonly string[];
}

/** The sequence of a procedure on a bolt count, or why there is none. */
export function sequenceFor(
  content: ProcedureContent,
  boltCount: number,
  relaxation: boolean,
  texts: SheetTexts,
): SheetSequence | { readonly refused: string } {
  try {
    const sequence = tighteningSequence({
      boltCount,
      pattern: content.pattern,
      numbering: content.numbering,
      passPercents: content.passPercents,
      relaxation,
      ...(content.group !== null && content.group > 1 ? { group: content.group } : {}),
      ...(content.tools > 1 ? { tools: content.tools } : {}),
    });
    const passes = passesByPercent(sequence);
    return {
      sequence,
      passes,
      lines: linesOf(sequence, passes, content, boltCount, texts),
      cautions: sequence.warnings.filter(({ code }) => code !== 'grouping-usual').map(texts.said),
    };
  } catch (error) {
    if (error instanceof CalcRefusal) return { refused: error.errors.map(texts.said).join(' ') };
    throw error;
  }
}

function passesByPercent(sequence: TighteningSequence): SheetSequence['passes'] {
  const byPercent = new Map<number, (readonly number[])[]>();
  for (const { kind, percent, steps } of sequence.passes) {
    if (kind === 'pattern') byPercent.set(percent, [...(byPercent.get(percent) ?? []), ...steps]);
  }
  return [...byPercent].map(([percent, steps]) => ({ percent, steps }));
}

const consecutive = (step: readonly number[]) => step.every((bolt, i) => i === 0 || bolt === (step[i - 1] ?? 0) + 1);

/** Letters of the groups in clockwise order, so that no group is taken for a bolt. */
export function groupLetter(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${groupLetter(Math.floor(index / 26) - 1)}${letter}`;
}

const stepText = (step: readonly number[], content: ProcedureContent, sequence: TighteningSequence): string => {
  const [first] = step;
  const last = step.at(-1);
  if (first === undefined || step.length === 1) return String(first ?? '');
  if (content.tools > 1) return step.join('+');
  const place = sequence.positions.find(({ label }) => label === first)?.clockwiseIndex ?? 1;
  const bolts = consecutive(step) ? `${first}–${last}` : step.join(' ');
  return `${groupLetter((place - 1) / step.length)}(${bolts})`;
};

function foursOf(
  steps: readonly (readonly number[])[],
  content: ProcedureContent,
  sequence: TighteningSequence,
): string[] {
  const texts = steps.map((step) => stepText(step, content, sequence));
  const fours: string[] = [];
  for (let start = 0; start < texts.length; start += 4) fours.push(texts.slice(start, start + 4).join(' '));
  return fours;
}

const joined = (items: readonly string[], and: string) =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')}${and}${items.at(-1)}`;

function linesOf(
  sequence: TighteningSequence,
  passes: SheetSequence['passes'],
  content: ProcedureContent,
  boltCount: number,
  { sequence: words }: SheetTexts,
): SequenceLine[] {
  const same = new Map<string, { numbers: string[]; steps: readonly (readonly number[])[] }>();
  for (const [index, { steps }] of passes.entries()) {
    const key = JSON.stringify(steps);
    const known = same.get(key) ?? { numbers: [], steps };
    same.set(key, { ...known, numbers: [...known.numbers, String(index + 1)] });
  }
  const lines = [...same.values()].map(({ numbers, steps }) => ({
    heading: fill(words.passes, { list: joined(numbers, words.and) }),
    fours: foursOf(steps, content, sequence),
    numbers: true,
  }));
  const final = sequence.passes.find(({ kind }) => kind === 'final-round');
  if (content.finalRound && final) {
    const plain = content.numbering === 'clockwise' && content.tools === 1;
    lines.push({
      heading: words.final,
      fours: plain ? [fill(words.finalClockwise, { count: boltCount })] : foursOf(final.steps, content, sequence),
      numbers: !plain,
    });
  }
  if (sequence.passes.some(({ kind }) => kind === 'relaxation'))
    lines.push({ heading: words.relaxation, fours: [words.sameAsFinal], numbers: false });
  return lines;
}
