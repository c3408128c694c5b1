import type { AreaProgress } from '@seatwell/contract';
import { dayOf, finishAtPace } from '@seatwell/workflow';
import { fill, type PaperLanguage, type SheetTexts, sheetTexts } from '../texts/sheet-texts.ts';
import type { ReportSource } from './load-report.ts';
import { allUnclosedA, figureNames, inColumns, lineOf, unclosedA } from './report-lines.ts';

/** More areas than these come together in one line: the report stays on its page. */
const MOST_AREAS = 14;
const MOST_PEOPLE = 8;

/** The progress report as it will be printed: one page. */
export interface ReportContent {
  readonly recordedAt: string;
  readonly head: string;
  readonly asOf: string;
  readonly address: string;
  readonly headlines: readonly string[];
  readonly columns: readonly string[];
  readonly areas: readonly { readonly name: string; readonly figures: readonly number[] }[];
  readonly sum: { readonly name: string; readonly figures: readonly number[] };
  readonly before: readonly string[];
  readonly signOffs: readonly { readonly what: string; readonly by: string; readonly count: number }[];
  readonly people: readonly string[];
  /** when the last joint would be tight at the present pace, and how sure that is; null where nothing can be said */
  readonly finish: string | null;
  readonly unplanned: string | null;
}

function areaLines(source: ReportSource, { report }: SheetTexts): ReportContent['areas'] {
  const line = (name: string, rows: readonly AreaProgress[]) => ({
    name,
    figures: inColumns(lineOf(rows, unclosedA(source, rows))),
  });
  const { areas } = source;
  const shown = areas.length > MOST_AREAS ? areas.slice(0, MOST_AREAS - 1) : areas;
  const rest = areas.slice(shown.length);
  return [
    ...shown.map((row) => line(row.area ? `${row.area.code} ${row.area.name}` : report.noArea, [row])),
    ...(rest.length > 0 ? [line(fill(report.more, { count: rest.length }), rest)] : []),
  ];
}

/** Who may soon not work any more, by person and day, the soonest first. */
function lapsing(areas: readonly AreaProgress[], { report, figures, words, someone }: SheetTexts): string[] {
  const found = new Map<string, { name: string; day: string; what: Set<string> }>();
  for (const { person, qualifiedFor, validThrough } of areas.flatMap(({ people }) => people.lapsing)) {
    const key = `${validThrough} ${person.personId}`;
    const known = found.get(key) ?? { name: person.name ?? someone, day: validThrough, what: new Set<string>() };
    known.what.add(words.qualifiedFor[qualifiedFor as keyof typeof words.qualifiedFor] ?? qualifiedFor);
    found.set(key, known);
  }
  const lines = [...found]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { name, day, what }]) => fill(report.person, { name, day: figures.day(day), what: [...what].join(', ') }));
  const rest = lines.length - MOST_PEOPLE;
  return rest > 0 ? [...lines.slice(0, MOST_PEOPLE), fill(report.morePeople, { count: rest })] : lines;
}

/** The finish at the present pace, with its uncertainty. */
function finishWords({ curve, total, now, shutdown }: ReportSource['today'], { report, figures }: SheetTexts) {
  const finish = finishAtPace(curve, total, dayOf(now, shutdown.timeZone));
  if (finish === undefined) return null;
  const { days, perDay, left, on, earliest, latest } = finish;
  const range =
    latest === null
      ? fill(report.paceOpen, { from: figures.day(earliest) })
      : fill(report.paceRange, { from: figures.day(earliest), to: figures.day(latest) });
  const values = { days, perDay: figures.printed(perDay), left, day: figures.day(on) };
  return `${fill(report.pace, values)} ${range} ${report.paceNotIn}`;
}

/** What the report says, from the answers that its screen shows. */
export function reportContent(source: ReportSource, language: PaperLanguage = 'en'): ReportContent {
  const texts = sheetTexts(language);
  const { report, figures } = texts;
  const { today, areas } = source;
  const { stillIn, shutdown } = today;
  const all = { ...lineOf(areas, allUnclosedA(source)), total: today.total };
  const count = (text: string, value: number) => fill(text, { count: value });
  return {
    recordedAt: today.now,
    head: `${source.site} · ${shutdown.name} · ${fill(report.day, { number: shutdown.dayNumber, days: shutdown.days })}`,
    asOf: fill(report.asOf, { at: figures.localTime(today.now, shutdown.timeZone) }),
    address: source.address,
    headlines: [
      ...(today.leaking > 0 ? [count(report.headlineLeaking, today.leaking)] : []),
      today.partTight.length > 0 ? count(report.headlinePartTight, today.partTight.length) : report.headlineNoPartTight,
      fill(report.headlineProgress, { tight: all.tight, total: all.total, planned: all.planned }),
    ],
    columns: figureNames.map((figure) => report[figure]),
    areas: areaLines(source, texts),
    sum: { name: report.all, figures: inColumns(all) },
    before: [
      fill(report.blindsIn, { count: stillIn.blindsIn, overdue: stillIn.blindsOverdue }),
      fill(report.fittings, { gaskets: stillIn.temporaryGaskets, bolts: stillIn.temporaryBolts }),
      fill(report.openEnds, { count: stillIn.openEnds, uncovered: stillIn.openEndsUncovered }),
      count(report.notProven, all.total - all.proven),
      count(report.holds, today.holds),
      count(report.reviews, today.needsReview),
    ],
    signOffs: today.signOffs.map(({ waitsFor, role, count: waiting }) => ({
      what: report.signOff[waitsFor as keyof typeof report.signOff] ?? waitsFor,
      by: role === null ? '' : report.roles[role],
      count: waiting,
    })),
    people: lapsing(areas, texts),
    finish: finishWords(today, texts),
    unplanned: today.curve.unplanned > 0 ? count(report.unplanned, today.curve.unplanned) : null,
  };
}
