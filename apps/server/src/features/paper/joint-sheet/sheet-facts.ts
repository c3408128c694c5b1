import { demandedLevel, facesOf, gasketOf } from '@seatwell/workflow';
import { fill, type SheetTexts } from '../texts/sheet-texts.ts';
import type { SheetSource } from './sheet-source.ts';
import { socketText, studLengthOf } from './stud-facts.ts';

/** A line of the sheet: its name and what is printed beside it; strong = large, read at arm's length. */
export interface SheetRow {
  readonly label: string;
  readonly value: string;
  readonly strong?: true;
  /** room to write beside or below it */
  readonly write?: true;
}

export interface SheetSection {
  readonly title: string;
  readonly rows: readonly SheetRow[];
}

const row = (label: string, value: string | null): SheetRow[] => (value === null ? [] : [{ label, value }]);
const strong = (label: string, value: string): SheetRow => ({ label, value, strong: true });

export const gasketsOf = ({ joint, make }: SheetSource): number => facesOf(joint, make) / 2;

/** Where the joint is and what this make is for. */
export function placeFacts(source: SheetSource, { facts, figures, words, notEntered }: SheetTexts): SheetSection {
  const { joint, make, settings } = source;
  const { line, location, drawing, item } = joint.whereabouts;
  const level = demandedLevel(joint, make, settings);
  const criticality = fill(facts.criticalityLine, { criticality: joint.criticality, level: words.checking[level] });
  const witness = settings.criticalities[joint.criticality].witnessPoint;
  const { medium, pressure_MPa, temperature_C } = joint.specification.service;
  const service = [
    medium,
    pressure_MPa === null ? null : figures.pressure(pressure_MPa),
    temperature_C === null ? null : figures.temperature(temperature_C),
  ].filter((part) => part !== null);
  return {
    title: facts.joint,
    rows: [
      ...row(facts.area, source.area),
      ...row(facts.system, source.system),
      { label: facts.line, value: line ?? notEntered },
      { label: facts.location, value: location ?? notEntered },
      ...row(facts.drawing, drawing),
      ...row(facts.item, item),
      ...row(
        facts.pack,
        source.packs.map(({ number, role }) => `${number} (${words.packRole[role]})`).join(', ') || null,
      ),
      ...row(facts.service, service.join(' · ') || null),
      {
        label: facts.make,
        value: fill(facts.makeLine, {
          number: make.number,
          purpose: words.purpose[make.purpose],
          scope: words.scope[make.workScope],
        }),
      },
      { label: facts.criticality, value: witness ? `${criticality} · ${facts.witnessPoint}` : criticality },
      ...row(facts.crew, source.crew),
      ...row(facts.remark, joint.remark),
    ],
  };
}

/** Flange, stack and gasket with what must be read off it. */
export function flangeFacts(source: SheetSource, { facts, figures, words }: SheetTexts): SheetSection {
  const { joint, make } = source;
  const { flange, clampedParts } = joint.specification;
  const gasket = gasketOf(joint, make);
  const parts = make.clampedParts ?? clampedParts;
  const values = { standard: words.standard[flange.standard], size: flange.size, rating: flange.rating };
  const stack = parts.map(({ kind, thickness_mm, note }) =>
    [words.part[kind], thickness_mm === null ? null : figures.length(thickness_mm), note]
      .filter((part) => part !== null)
      .join(' '),
  );
  const count = gasketsOf(source);
  const inside = gasket.contactInside_mm;
  const outside = gasket.contactOutside_mm;
  const wanted = [words.family[gasket.family], gasket.detail, flange.size, flange.rating].filter(
    (each) => each !== null,
  );
  return {
    title: facts.flangeSection,
    rows: [
      strong(facts.flange, fill(flange.standard.startsWith('ASME') ? facts.flangeLine : facts.flangeLineEn, values)),
      { label: facts.facing, value: words.facing[flange.facing] },
      ...row(facts.stack, stack.length > 0 ? `${stack.join(' | ')} (${facts.stackNote})` : null),
      strong(facts.gasket, fill(facts.gasketCount, { count, family: words.family[gasket.family] })),
      ...row(
        facts.gasketSize,
        inside !== null && outside !== null
          ? fill(facts.gasketSizeLine, { inside: figures.length(inside), outside: figures.length(outside) })
          : null,
      ),
      ...row(facts.gasketThickness, gasket.thickness_mm === null ? null : figures.length(gasket.thickness_mm)),
      { label: facts.marking, value: fill(facts.markingLine, { wanted: wanted.join(' · ') }), write: true },
      { label: facts.batch, value: '', write: true },
      { label: facts.faces, value: fill(facts.facesLine, { count: facesOf(joint, make) }) },
    ],
  };
}

/** Studs, nuts, socket, lubricant. */
export function boltingFacts(source: SheetSource, texts: SheetTexts): SheetSection {
  const { facts, figures, notEntered } = texts;
  const { joint, make, lubricant } = source;
  const { bolting, specification } = joint;
  if (!bolting) return { title: facts.boltingSection, rows: [strong(facts.studs, notEntered)] };
  const { length_mm, from } = studLengthOf(
    bolting,
    make.clampedParts ?? specification.clampedParts,
    specification.flange,
  );
  const name = make.target?.lubricant ?? lubricant?.name ?? notEntered;
  const factor =
    make.target?.basis === 'makers-torque'
      ? facts.nutFactorMaker
      : lubricant
        ? fill(facts.nutFactorLine, { factor: figures.plain(lubricant.nutFactor), source: lubricant.source })
        : notEntered;
  return {
    title: facts.boltingSection,
    rows: [
      strong(
        facts.studs,
        fill(facts.studsLine, {
          count: bolting.count,
          thread: bolting.thread,
          length: length_mm === null ? '?' : figures.studLength(length_mm),
        }),
      ),
      { label: '', value: facts[from] },
      strong(facts.grade, bolting.grade ?? notEntered),
      {
        label: facts.nuts,
        value: fill(facts.nutsLine, { count: 2 * bolting.count, grade: bolting.nutGrade ?? notEntered }),
      },
      strong(facts.socket, socketText(bolting.thread, texts)),
      strong(facts.lubricant, name),
      { label: '', value: facts.lubricantOn },
      { label: facts.nutFactor, value: factor },
    ],
  };
}

/** The procedure in force and how it numbers and tightens. */
export function procedureFacts({ procedure }: SheetSource, { facts, words, notEntered }: SheetTexts): SheetSection {
  if (!procedure) return { title: facts.procedure, rows: [{ label: facts.procedure, value: notEntered }] };
  const { content } = procedure;
  return {
    title: facts.procedure,
    rows: [
      strong(
        facts.procedure,
        fill(facts.procedureLine, { code: procedure.code, revision: procedure.revision, title: procedure.title }),
      ),
      { label: facts.numbering, value: words.numbering[content.numbering] },
      { label: facts.pattern, value: words.pattern[content.pattern] },
      {
        label: facts.method,
        value: fill(facts.toolsAtOnce, { method: words.method[content.method], tools: content.tools }),
      },
      ...row(facts.group, content.group !== null && content.group > 1 ? String(content.group) : null),
    ],
  };
}
