import type { PaperUnits } from '../paper-figures.ts';
import { fill, type PaperLanguage, type SheetTexts, sheetTexts } from '../texts/sheet-texts.ts';
import type { TestSheetSource } from './load-test-sheet.ts';
import { blindRow, exclusion, gaugeRow, releaseFacts, type TestFact, testFacts } from './test-facts.ts';

type Role = keyof SheetTexts['testSheet']['roles'];
const ROLES: readonly Role[] = ['inside', 'boundary', 'reinstated'];

/** The test sheet of a pack as it will be printed. */
export interface TestContent {
  readonly recordedAt: string;
  readonly number: string;
  readonly head: string;
  readonly version: string;
  readonly address: string;
  readonly banner: { readonly heading: string; readonly text: string } | null;
  readonly test: readonly TestFact[];
  readonly exclusion: readonly TestFact[];
  readonly release: readonly TestFact[];
  readonly stoppers: readonly string[];
  readonly gauges: readonly (readonly string[])[];
  readonly blinds: readonly (readonly string[])[];
  readonly joints: readonly { readonly role: string; readonly rows: readonly (readonly string[])[] }[];
  readonly readings: readonly (readonly string[])[];
}

function stopperLines({ pack }: TestSheetSource, { testSheet, figures, none }: SheetTexts): string[] {
  return pack.stoppers.map(({ code, data }) => {
    const sentence = testSheet.stopper[code as keyof typeof testSheet.stopper] ?? code;
    const known = Object.entries(data).map(([name, value]) => [
      name,
      typeof value === 'number' ? figures.plain(value) : (value ?? none),
    ]);
    const pressure = data.pressure_MPa;
    return fill(sentence, {
      ...Object.fromEntries(known),
      ...(typeof pressure === 'number'
        ? { bar: figures.bar(pressure), minutes: figures.plain(Number(data.hold_min)) }
        : {}),
    });
  });
}

function jointRows({ pack }: TestSheetSource, role: Role, { testSheet, words }: SheetTexts): string[][] {
  return pack.members
    .filter((member) => member.role === role && !member.cancelled)
    .map(({ tag, size, rating, stage, result }) => [
      tag,
      `${size} ${rating}`,
      words.stage[stage],
      result ? testSheet.results[result] : role === 'reinstated' ? '' : testSheet.noLeakBox,
    ]);
}

/** What the sheet of a pack says, from the same answer as its screen. */
export function testContent(
  source: TestSheetSource,
  language: PaperLanguage = 'en',
  units: PaperUnits = 'SI',
): TestContent {
  const texts = sheetTexts(language, units);
  const { testSheet, figures } = texts;
  const { pack, timeZone, printedAt } = source;
  return {
    recordedAt: pack.readings.at(-1)?.readAt ?? pack.releasedAt ?? printedAt,
    number: pack.number,
    head: `${source.site} · ${source.shutdown}`,
    version: fill(texts.version, { version: pack.version, printed: figures.localTime(printedAt, timeZone) }),
    address: source.address,
    banner: pack.released === null ? { heading: testSheet.notReleased, text: testSheet.notReleasedText } : null,
    test: testFacts(source, texts),
    exclusion: exclusion(source, texts),
    release: releaseFacts(source, texts),
    stoppers: stopperLines(source, texts),
    gauges: source.gauges.map((gauge) => gaugeRow(gauge, texts)),
    blinds: source.blinds.map((blind) => blindRow(blind, texts)),
    joints: ROLES.map((role) => ({ role: testSheet.roles[role], rows: jointRows(source, role, texts) })).filter(
      ({ rows }) => rows.length > 0,
    ),
    readings: pack.readings.map((reading) => [
      figures.localTime(reading.readAt, timeZone),
      `${figures.bar(reading.pressure_MPa)} bar`,
      reading.metalTemperature_C === null ? '' : figures.degrees(reading.metalTemperature_C),
      figures.plain(reading.held_min),
      reading.gaugeIds.map((gaugeId) => pack.gaugeTags[gaugeId] ?? '').join(', '),
      '',
      '',
    ]),
  };
}
