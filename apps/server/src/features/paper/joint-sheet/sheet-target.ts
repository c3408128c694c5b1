import { CalcRefusal, convert, hydraulicPressure } from '@seatwell/calc';
import { relaxationDemanded, type TargetEvidence } from '@seatwell/workflow';
import { fill, type SheetTexts } from '../texts/sheet-texts.ts';
import { computedRows } from './computed-passes.ts';
import { withheld } from './sheet-banners.ts';
import type { SheetRow, SheetSection } from './sheet-facts.ts';
import type { SheetSequence } from './sheet-sequence.ts';
import type { SheetSource } from './sheet-source.ts';
import { tensionedRows } from './tensioned-passes.ts';

/** A row of the tightening table; empty strings are boxes to fill in. */
export interface SheetPass {
  readonly name: string;
  readonly percent: string;
  /** the torque; where bolts are stretched, the elongation in mm and in */
  readonly torque_Nm: string;
  readonly torque_ftlbf: string;
  readonly pump: string;
}

function limitName({ words, targetLimits }: SheetTexts, name: string): string {
  const known: Readonly<Record<string, string>> = { ...targetLimits.limit, ...words.limit };
  return known[name] ?? name;
}

type Window = NonNullable<SheetSource['window']>;

function windowRows(window: Window | null, insideWindow: boolean, texts: SheetTexts): SheetRow[] {
  const { target } = texts;
  const { printed } = texts.figures;
  const bounding = (limits: Window['lower']) => limits.filter(({ advisory }) => !advisory);
  const low = bounding(window?.lower ?? []).reduce<Window['lower'][number] | null>(
    (most, each) => (most && most.boltStress_MPa >= each.boltStress_MPa ? most : each),
    null,
  );
  const high = bounding(window?.upper ?? []).reduce<Window['upper'][number] | null>(
    (least, each) => (least && least.boltStress_MPa <= each.boltStress_MPa ? least : each),
    null,
  );
  const verdict = insideWindow ? target.windowInside : target.windowOutside;
  if (!low || !high) return [{ label: target.window, value: `${verdict}; ${target.windowNotRecomputed}` }];
  const named = (name: string) => limitName(texts, name);
  const text = fill(low.boltStress_MPa <= high.boltStress_MPa ? target.windowLine : target.windowClosed, {
    low: printed(low.boltStress_MPa),
    lowName: named(low.name),
    high: printed(high.boltStress_MPa),
    highName: named(high.name),
  });
  return [{ label: target.window, value: `${text}; ${verdict}` }];
}

/** What the target was calculated for: grade, condition, coating, washers, lubricant, gasket. */
function assumed(approved: TargetEvidence, texts: SheetTexts): string {
  const { target, words, targetLimits } = texts;
  const { bolts } = approved;
  const coating = bolts && (bolts.coating ? fill(targetLimits.coated, { coating: bolts.coating }) : targetLimits.bare);
  const condition = [
    words.condition[approved.boltCondition],
    coating,
    bolts && targetLimits.washers[bolts.washersPerBolt],
  ];
  return fill(target.assumesLine, {
    grade: approved.boltGrade ?? texts.notEntered,
    condition: condition.filter(Boolean).join(' · '),
    lubricant: approved.lubricant,
    gasket: words.family[approved.gasketFamily as keyof typeof words.family] ?? approved.gasketFamily,
  });
}

/** Limits that the window does not hold, and each thing that is missing once; empty where it holds all. */
function uncheckedLine({ notChecked = [] }: TargetEvidence, { targetLimits }: SheetTexts): string {
  if (notChecked.length === 0) return '';
  const missing = new Set(notChecked.flatMap((each) => each.missing));
  return fill(targetLimits.item, {
    limit: notChecked.map(({ limit }) => targetLimits.unchecked[limit]).join(' · '),
    missing: [...missing].map((each) => targetLimits.missing[each]).join(' · '),
  });
}

/** Target and limits; nothing of it where the set values are withheld. */
export function targetFacts(source: SheetSource, texts: SheetTexts): SheetSection | null {
  const { make, window } = source;
  const approved = make.target;
  if (!approved || withheld(source) !== null) return null;
  const { target, words } = texts;
  const { printed, footPounds } = texts.figures;
  const rows: SheetRow[] = [{ label: target.basis, value: target.bases[approved.basis] }];
  if (approved.torque_Nm !== null) {
    const value = { Nm: printed(approved.torque_Nm), ftlbf: footPounds(approved.torque_Nm) };
    rows.push({ label: target.torque, value: fill(target.torqueLine, value), strong: true });
  }
  if (approved.elongation) {
    const { elongation_mm, effectiveLength_mm, elasticModulus_MPa } = approved.elongation;
    const value = {
      mm: printed(elongation_mm),
      in: printed(convert('length', elongation_mm, 'mm', 'in')),
      length: printed(effectiveLength_mm),
      GPa: printed(elasticModulus_MPa / 1000),
    };
    const { elongation, elongationLine } = texts.targetLimits;
    rows.push({ label: elongation, value: fill(elongationLine, value), strong: true });
  }
  if (approved.boltStress_MPa !== null && approved.area !== null) {
    const value = fill(target.stressLine, {
      MPa: printed(approved.boltStress_MPa),
      ksi: printed(convert('pressure', approved.boltStress_MPa, 'MPa', 'ksi')),
      area: words.area[approved.area],
    });
    rows.push({ label: target.stress, value });
  }
  if (approved.boltLoad_N !== null) {
    const value = fill(target.loadLine, {
      kN: printed(approved.boltLoad_N / 1000),
      kip: printed(convert('force', approved.boltLoad_N, 'N', 'kip')),
    });
    rows.push({ label: target.load, value });
  }
  if (approved.governedBy) rows.push({ label: target.governs, value: limitName(texts, approved.governedBy) });
  if (approved.basis !== 'makers-torque') rows.push(...windowRows(window, approved.insideWindow, texts));
  rows.push({ label: target.assumes, value: assumed(approved, texts) });
  rows.push({
    label: approved.basis === 'makers-torque' ? target.source : target.sources,
    value: [...new Set(approved.sources)].join(' · '),
  });
  const unchecked = uncheckedLine(approved, texts);
  if (unchecked !== '') rows.push({ label: texts.targetLimits.notChecked, value: unchecked });
  for (const { rule, reason } of make.deviations)
    rows.push({ label: target.deviations, value: fill(target.deviationLine, { rule, reason }) });
  return { title: target.title, rows };
}

function pumpText(
  source: SheetSource,
  torque_Nm: number | null,
  pressure_MPa: number | null,
  { figures: { printed } }: SheetTexts,
): string {
  const bar = (MPa: number) => `${printed(MPa * 10)} bar / ${printed(convert('pressure', MPa, 'MPa', 'psi'))} psi`;
  if (pressure_MPa !== null) return bar(pressure_MPa);
  const { pump } = source;
  if (!pump || torque_Nm === null) return '';
  try {
    const { pairs, gaugeDivision_MPa } = pump;
    const set = hydraulicPressure({ torque_Nm, pairs, gaugeDivision_MPa });
    return `${bar(set.pressure_MPa)} (${printed(set.resultingTorque_Nm)} N·m)`;
  } catch (error) {
    // A pass below the tool's chart is set from another tool: the box stays empty, to be filled in.
    if (error instanceof CalcRefusal) return '';
    throw error;
  }
}

export const relaxationWanted = ({ joint, make, settings }: SheetSource): boolean =>
  relaxationDemanded(joint, make, settings);

/** Every pass with its set value; the values are dashes where they are withheld. */
export function sheetPasses(source: SheetSource, sequence: SheetSequence | null, texts: SheetTexts): SheetPass[] {
  const { make, procedure } = source;
  const { printed, footPounds, plain } = texts.figures;
  const clear = withheld(source) === null;
  const percents = sequence?.passes.map(({ percent }) => percent) ?? procedure?.content.passPercents ?? [];
  const setRow = (name: string, percent: string, torque_Nm: number | null, pressure_MPa: number | null): SheetPass => ({
    name,
    percent,
    torque_Nm: torque_Nm === null ? texts.none : printed(torque_Nm),
    torque_ftlbf: torque_Nm === null ? texts.none : footPounds(torque_Nm),
    pump: clear ? pumpText(source, torque_Nm, pressure_MPa, texts) : texts.none,
  });
  const rowOf = (name: string, percent: number): SheetPass => {
    const set = clear ? make.target?.passes.find((pass) => pass.percent === percent) : undefined;
    const row = setRow(name, plain(percent), set?.torque_Nm ?? null, set?.pressure_MPa ?? null);
    if (set?.elongation_mm === undefined) return row;
    const { elongation_mm } = set;
    return {
      ...row,
      torque_Nm: printed(elongation_mm),
      torque_ftlbf: printed(convert('length', elongation_mm, 'mm', 'in')),
    };
  };
  const computed = computedRows(source, texts);
  const tensioned = tensionedRows(source, texts);
  const rows = tensioned
    ? tensioned.map(({ name, percent, pressure_MPa }) => setRow(name, percent, null, pressure_MPa))
    : computed
      ? computed.map(({ name, percent, torque_Nm }) => setRow(name, percent, torque_Nm, null))
      : percents.map((percent, index) => rowOf(String(index + 1), percent));
  if (procedure?.content.finalRound) rows.push(rowOf(texts.passes.final, 100));
  if (procedure && relaxationWanted(source)) rows.push(rowOf(texts.passes.relaxation, 100));
  return rows;
}
