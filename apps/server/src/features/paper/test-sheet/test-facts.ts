import { convert, pneumaticTest } from '@seatwell/calc';
import { fill, type SheetTexts } from '../texts/sheet-texts.ts';
import type { SheetBlind, SheetGauge, TestSheetSource } from './load-test-sheet.ts';

/** A line of facts; `write` leaves room for a pen. */
export interface TestFact {
  readonly label: string;
  readonly value: string;
  readonly strong?: boolean;
  readonly write?: boolean;
}

const GAS: readonly string[] = ['pneumatic-test', 'gas-or-sniff-test'];
const METHOD = 'PCC-2-2018';

/** The test as planned. */
export function testFacts(
  { pack }: TestSheetSource,
  { testSheet, figures, words, notEntered }: SheetTexts,
): TestFact[] {
  const { printed, bar } = figures;
  const { plan } = pack;
  const entered = plan.pressureAsEntered;
  const psi = printed(convert('pressure', plan.pressure_MPa, 'MPa', 'psi'));
  const pressure = fill(testSheet.pressureLine, { bar: bar(plan.pressure_MPa), psi });
  return [
    { label: testSheet.area, value: pack.area ? `${pack.area.code} ${pack.area.name}` : notEntered },
    { label: testSheet.system, value: pack.system ? `${pack.system.code} ${pack.system.name}` : notEntered },
    { label: testSheet.way, value: words.proof[plan.way], strong: true },
    { label: testSheet.medium, value: plan.medium, strong: true },
    {
      label: testSheet.pressure,
      value: entered
        ? `${pressure}; ${fill(testSheet.asEntered, { value: figures.plain(entered.value), unit: entered.unit })}`
        : pressure,
      strong: true,
    },
    { label: testSheet.hold, value: fill(testSheet.holdLine, { minutes: printed(plan.hold_min) }), strong: true },
    { label: testSheet.planned, value: pack.plannedOn ? figures.day(pack.plannedOn) : notEntered },
    { label: testSheet.state, value: testSheet.states[pack.state] },
  ];
}

/**
 * The distance to keep: computed for gas where its volume is known, never assumed where it is not.
 * Source: ASME PCC-2 article 501, the later form, which keeps people farther away.
 */
export function exclusion({ pack, volume_m3 }: TestSheetSource, { testSheet, figures, said }: SheetTexts): TestFact[] {
  const label = testSheet.exclusion;
  if (!GAS.includes(pack.plan.way)) return [{ label, value: testSheet.exclusionLiquid, write: true }];
  if (volume_m3 === null) return [{ label, value: testSheet.exclusionMissing, strong: true, write: true }];
  const found = pneumaticTest({ testPressure_MPa: pack.plan.pressure_MPa, volume_m3, method: METHOD });
  const value = fill(testSheet.exclusionComputed, {
    distance: figures.distance(found.distance_m),
    volume: figures.dimension(volume_m3),
    energy: figures.printed(found.storedEnergy_J / 1e6),
  });
  return [
    { label, value, strong: true },
    { label: '', value: [`ASME ${METHOD}, article 501`, ...found.warnings.map(said)].join('. ') },
  ];
}

/** What is signed before pressure: as recorded, or to be written. */
export function releaseFacts({ pack, timeZone }: TestSheetSource, texts: SheetTexts): TestFact[] {
  const { testSheet, figures } = texts;
  const { released } = pack;
  const sure = (label: string, done: boolean | undefined): TestFact =>
    released ? { label, value: done ? testSheet.yes : testSheet.no } : { label, value: '', write: true };
  return [
    sure(testSheet.boundaryWalked, released?.boundaryWalked),
    sure(testSheet.blindsRated, released?.blindsRated),
    sure(testSheet.reliefValvesOut, released?.reliefValvesOut),
    released
      ? { label: testSheet.metalTemperature, value: figures.temperature(released.metalTemperature_C) }
      : { label: testSheet.metalTemperature, value: '', write: true },
    released
      ? {
          label: testSheet.releasedBy,
          value: fill(testSheet.releasedLine, {
            name: released.by?.name ?? texts.someone,
            at: figures.localTime(released.at, timeZone),
          }),
        }
      : { label: testSheet.releasedBy, value: testSheet.toSign, write: true },
  ];
}

/** Gauges with their calibration in force, or the lack of it. */
export const gaugeRow = (gauge: SheetGauge, { testSheet, figures, none }: SheetTexts): string[] => {
  const day = (isoDay: string | null) => (isoDay === null ? none : figures.day(isoDay));
  const sound = gauge.failedOn === null && gauge.calibratedOn !== null;
  const range = `0–${figures.dimension(gauge.scaleMaximum)} ${gauge.scaleUnit}`;
  const divided = gauge.scaleDivision === null ? range : `${range} / ${figures.plain(gauge.scaleDivision)}`;
  const number = gauge.certificateNumber ?? none;
  const certificate = gauge.provisional ? fill(testSheet.provisional, { number }) : number;
  return [
    gauge.tag,
    divided,
    sound ? day(gauge.calibratedOn) : testSheet.noCalibration,
    sound ? day(gauge.validThrough) : none,
    sound ? certificate : none,
  ];
};

/** Blinds with where they are now. */
export const blindRow = (blind: SheetBlind, { testSheet, figures, words, notEntered }: SheetTexts): string[] => [
  blind.number,
  words.blind[blind.type],
  blind.rating ?? notEntered,
  blind.thickness_mm === null ? notEntered : figures.length(blind.thickness_mm),
  blind.joint ?? notEntered,
  blind.out ? testSheet.blindOut : blind.in ? testSheet.blindIn : testSheet.notIn,
];
