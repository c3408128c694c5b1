import { convert } from '@seatwell/calc';
import type { Tensioning } from '@seatwell/workflow';
import { fill, type SheetTexts } from '../texts/sheet-texts.ts';
import { withheld } from './sheet-banners.ts';
import { groupLetter, type SequenceLine, type SheetSequence } from './sheet-sequence.ts';
import type { SheetSource } from './sheet-source.ts';

/** A row of the tightening table: one group of one pass. */
export interface TensionedRow {
  readonly name: string;
  readonly percent: string;
  readonly pressure_MPa: number;
}

/** What a tensioner is set to; null where it is withheld or the joint is not tensioned. */
function shownPlan(source: SheetSource): Tensioning | null {
  return withheld(source) === null ? (source.make.target?.tensioning ?? null) : null;
}

/** The pressure of every group in every pass; null where there is none to print. */
export function tensionedRows(source: SheetSource, { figures }: SheetTexts): readonly TensionedRow[] | null {
  const plan = shownPlan(source);
  if (!plan) return null;
  return plan.passes.flatMap(({ percent, groupPressures_MPa }, pass) =>
    groupPressures_MPa.map((pressure_MPa, group) => ({
      name: `${pass + 1} ${groupLetter(group)}`,
      percent: figures.plain(percent),
      pressure_MPa,
    })),
  );
}

/** The bolts of each group, in the numbers chalked on the flange; they are not secret where values are withheld. */
export function tensionedLines(
  { make }: SheetSource,
  sequence: SheetSequence | null,
  { sequence: words }: SheetTexts,
): readonly SequenceLine[] | null {
  const plan = make.target?.tensioning;
  if (!plan || !sequence) return null;
  const labels = new Map(sequence.sequence.positions.map(({ label, clockwiseIndex }) => [clockwiseIndex, label]));
  const relaxation = sequence.lines.filter(({ heading }) => heading === words.relaxation);
  return [
    ...plan.groups.map((group, index) => {
      const named = group.map((place) => labels.get(place) ?? place);
      return {
        heading: fill(words.tensioned, { group: groupLetter(index) }),
        fours: Array.from({ length: Math.ceil(named.length / 4) }, (_, k) => named.slice(4 * k, 4 * k + 4).join(' ')),
        numbers: true,
      };
    }),
    { heading: words.final, fours: [words.tensionedCheck], numbers: false },
    ...relaxation,
  ];
}

/** What must be known beside the pressures: for which tool they are, how it is done, and what to look at before. */
export function tensionedNotes(source: SheetSource, { passes, figures }: SheetTexts): readonly string[] {
  const plan = shownPlan(source);
  if (!plan) return [];
  const { printed } = figures;
  return [
    fill(passes.tensionedNote, {
      tool: plan.toolTag,
      area: printed(plan.hydraulicArea_mm2),
      load: printed(plan.toolLoad_N / 1000),
      kip: printed(convert('force', plan.toolLoad_N, 'N', 'kip')),
      share: printed(plan.utilisation * 100),
    }),
    passes.tensionedHow,
    fill(passes.tensionedCaution, { length: figures.studLength(plan.protrusion_mm) }),
    ...(plan.groups.length > 1 ? [passes.tensionedSimulated] : []),
  ];
}
