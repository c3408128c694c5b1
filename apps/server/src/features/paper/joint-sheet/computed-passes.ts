import { type ComputedPass, computedPasses } from '@seatwell/workflow';
import { fill, type SheetTexts } from '../texts/sheet-texts.ts';
import { withheld } from './sheet-banners.ts';
import type { SequenceLine, SheetSequence } from './sheet-sequence.ts';
import type { SheetSource } from './sheet-source.ts';

/** A row of the tightening table before it is put in units: one set value of one pass. */
export interface ComputedRow {
  readonly name: string;
  readonly percent: string;
  /** null where the values are withheld */
  readonly torque_Nm: number | null;
}

/** Every set value of every pass with computed loads, the highest first; null where the joint goes by its procedure. */
export function computedRows(source: SheetSource, texts: SheetTexts): readonly ComputedRow[] | null {
  const passes = computedPasses(source.make);
  if (!passes) return null;
  if (withheld(source) !== null)
    return passes.map((_, index) => ({ name: String(index + 1), percent: texts.none, torque_Nm: null }));
  return passes.flatMap(({ level_percent, setValues_Nm }, index) =>
    [...setValues_Nm].reverse().map((torque_Nm) => ({
      name: String(index + 1),
      percent: texts.figures.plain(Math.round(level_percent)),
      torque_Nm,
    })),
  );
}

/** Bolts in a row with the same set value. */
function runsOf({ steps }: ComputedPass): { readonly setValue: number; readonly bolts: number[] }[] {
  const runs: { setValue: number; bolts: number[] }[] = [];
  for (const { bolt, setValue } of steps) {
    const last = runs.at(-1);
    if (last?.setValue === setValue) last.bolts.push(bolt);
    else runs.push({ setValue, bolts: [bolt] });
  }
  return runs;
}

/**
 * The order of the bolts with the value of each: a line for each turn of the dial. Rounds of the procedure after the
 * passes stay as they are.
 */
export function computedLines(
  source: SheetSource,
  sequence: SheetSequence | null,
  texts: SheetTexts,
): readonly SequenceLine[] | null {
  const passes = computedPasses(source.make);
  if (!passes || !sequence) return null;
  const clear = withheld(source) === null;
  const labels = new Map(sequence.sequence.positions.map(({ label, clockwiseIndex }) => [clockwiseIndex, label]));
  const fours = (bolts: readonly number[]) => {
    const named = bolts.map((bolt) => labels.get(bolt) ?? bolt);
    return Array.from({ length: Math.ceil(named.length / 4) }, (_, k) => named.slice(4 * k, 4 * k + 4).join(' '));
  };
  const lines = passes.flatMap((pass, index) =>
    runsOf(pass).map(({ setValue, bolts }) => ({
      heading: clear
        ? fill(texts.sequence.computed, {
            pass: index + 1,
            value: texts.figures.printed(pass.setValues_Nm[setValue] ?? 0),
          })
        : fill(texts.sequence.passes, { list: index + 1 }),
      fours: fours(bolts),
      numbers: true,
    })),
  );
  return [...lines, ...sequence.lines.filter(({ heading }) => isRound(heading, texts))];
}

const isRound = (heading: string, { sequence }: SheetTexts) =>
  heading === sequence.final || heading === sequence.relaxation;

/** What must be known of computed loads beside them: what they end at, and what they are not. */
export function computedNotes(source: SheetSource, { passes }: SheetTexts): readonly string[] {
  const plan = source.make.target?.tightening;
  if (plan?.way !== 'computed-loads' || withheld(source) !== null) return [];
  return [
    fill(passes.computedNote, {
      low: Math.round(plan.band.min),
      high: Math.round(plan.band.max),
      cap: Math.round(plan.cap_percent),
    }),
  ];
}
