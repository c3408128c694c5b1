import { boltPlanSvg, drawingPalettes, type PlanBolt, type PlanGroup } from '@seatwell/workflow';
import { fill, type SheetTexts } from '../texts/sheet-texts.ts';
import { groupLetter, type SheetSequence } from './sheet-sequence.ts';
import type { SheetSource } from './sheet-source.ts';

/** The bolt plan as data: labels by place, groups, and where it is looked at from. */
export interface PlanContent {
  readonly bolts: readonly { readonly label: number; readonly clockwiseIndex: number }[];
  readonly groups: readonly PlanGroup[];
  readonly title: string;
  readonly across: string;
  readonly viewedFrom: string | null;
  readonly bolt1At: string | null;
  /** warnings where viewing side or datum are not entered; room to write is left beside each */
  readonly ask: readonly string[];
  readonly notes: readonly string[];
  /** why there is no drawing */
  readonly missing: string | null;
  /** too many bolts for a corner of the first page */
  readonly ownPage: boolean;
}

interface PlanOrder {
  readonly tag: string;
  readonly count: number;
  readonly group: number | null;
  readonly sequence: SheetSequence | null;
  /** why there is no sequence, and so no agreed numbers */
  readonly missing: string | null;
}

const MOST_BESIDE_FACTS = 40;

/** The plan of a bolt count in the agreed numbering, without a place of its own. */
export function planOf({ tag, count, group, sequence, missing }: PlanOrder, { plan }: SheetTexts): PlanContent {
  const bolts = sequence?.sequence.positions.map(({ label, clockwiseIndex }) => ({ label, clockwiseIndex })) ?? [];
  const size = group ?? 1;
  const groups =
    sequence && size > 1
      ? Array.from({ length: count / size }, (_, index) => ({
          label: groupLetter(index),
          firstClockwiseIndex: index * size + 1,
          lastClockwiseIndex: (index + 1) * size,
        }))
      : [];
  return {
    bolts,
    groups,
    title: fill(plan.drawing, { tag, count }),
    across: fill(plan.across, { count }),
    viewedFrom: null,
    bolt1At: null,
    ask: [],
    notes: [plan.notchTop, ...(groups.length > 0 ? [plan.groups] : [])],
    missing: bolts.length > 0 ? null : fill(plan.none, { reason: missing ?? plan.noProcedure }),
    ownPage: bolts.length > MOST_BESIDE_FACTS,
  };
}

/** The plan of a joint with its viewing side and datum; without a procedure no numbering is agreed and none is drawn. */
export function planContent(
  { joint, procedure }: SheetSource,
  sequence: SheetSequence | null,
  refused: string | null,
  texts: SheetTexts,
): PlanContent {
  const { plan } = texts;
  const { viewedFrom, bolt1At } = joint.whereabouts;
  const drawn = planOf(
    {
      tag: joint.tag,
      count: joint.bolting?.count ?? 0,
      group: procedure?.content.group ?? null,
      sequence,
      missing: joint.bolting === null ? plan.boltingMissing : refused,
    },
    texts,
  );
  return {
    ...drawn,
    viewedFrom: viewedFrom === null ? null : fill(plan.viewedFrom, { side: viewedFrom }),
    bolt1At: bolt1At === null ? null : fill(plan.bolt1, { place: bolt1At }),
    ask: [...(viewedFrom === null ? [plan.noViewingSide] : []), ...(bolt1At === null ? [plan.noDatum] : [])],
  };
}

/** The drawing of the plan for print, as wide as it will be set: sizes in points. */
export function planSvg(content: PlanContent, tag: string, width_pt: number): string {
  const bolts: PlanBolt[] = content.bolts.map((bolt) => ({ ...bolt, passesDone: 0 }));
  return boltPlanSvg({
    bolts,
    groups: content.groups,
    passes: 1,
    size: width_pt,
    palette: drawingPalettes.print,
    title: content.title,
    labels: 'every',
    centre: [
      { text: tag, size: 0.075, weight: 720 },
      { text: content.across, size: 0.045, tone: 'soft' },
    ],
  });
}
