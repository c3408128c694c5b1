import { CalcRefusal, findFlange, findNut, inchFraction, studLength } from '@seatwell/calc';
import type { BoltingSpecification, ClampedPart, FlangeSpecification } from '@seatwell/contract';
import { fill, type SheetTexts } from '../texts/sheet-texts.ts';

export interface StudLengthFound {
  readonly length_mm: number | null;
  readonly from: 'lengthEntered' | 'lengthComputed' | 'lengthFromTable' | 'lengthUnknown';
}

const refusedAsNull = <T>(compute: () => T): T | null => {
  try {
    return compute();
  } catch (error) {
    if (error instanceof CalcRefusal) return null;
    throw error;
  }
};

const isPair = (parts: readonly ClampedPart[]) => parts.every(({ kind }) => kind === 'flange' || kind === 'gasket');

function fromTable(flange: FlangeSpecification, parts: readonly ClampedPart[], thread: string): number | null {
  if (flange.standard === 'custom' || !isPair(parts)) return null;
  const row = refusedAsNull(() => findFlange(flange));
  // Another bolting than the standard's: its length is not this stud's.
  if (!row || row.boltThread !== thread) return null;
  if (flange.facing === 'ring-joint') return row.studLengthRingJoint_mm ?? null;
  return flange.facing === 'raised-face' ? (row.studLength_mm ?? null) : null;
}

/** The stud's length: as entered, else of the whole stack, else of the standard's table for two plain flanges. */
export function studLengthOf(
  bolting: BoltingSpecification,
  parts: readonly ClampedPart[],
  flange: FlangeSpecification,
): StudLengthFound {
  if (bolting.length_mm !== null) return { length_mm: bolting.length_mm, from: 'lengthEntered' };
  const known = parts.flatMap(({ kind, thickness_mm }) => (thickness_mm === null ? [] : [{ kind, thickness_mm }]));
  if (known.length > 0 && known.length === parts.length) {
    const nut = refusedAsNull(() => findNut({ thread: bolting.thread }));
    const computed = refusedAsNull(() =>
      studLength({
        thread: bolting.thread,
        clampedParts: known,
        ...(nut?.height_mm === undefined ? {} : { nutHeight_mm: nut.height_mm }),
      }),
    );
    if (computed) return { length_mm: computed.length_mm, from: 'lengthComputed' };
  }
  const length_mm = refusedAsNull(() => fromTable(flange, parts, bolting.thread));
  return length_mm === null ? { length_mm, from: 'lengthUnknown' } : { length_mm, from: 'lengthFromTable' };
}

/** The socket that fits the nut, in millimetres and the inch fraction where the nut is an inch one. */
export function socketText(thread: string, { facts, figures, words }: SheetTexts): string {
  const nut = refusedAsNull(() => findNut({ thread }));
  if (!nut) return facts.socketUnknown;
  const values = { mm: figures.dimension(nut.acrossFlats_mm), series: words.nut[nut.series] };
  const sixteenths = (nut.acrossFlats_mm / 25.4) * 16;
  const inches = Math.round(sixteenths) / 16;
  // Tables in millimetres are rounded to a hundredth or a tenth.
  return thread.startsWith('M') || Math.abs(sixteenths - inches * 16) > 0.05
    ? fill(facts.socketLineMetric, values)
    : fill(facts.socketLine, { ...values, inch: `${inchFraction(inches)} in` });
}
