import { convert, pneumaticTest } from '@seatwell/calc';
import { dimension, localTime, printed } from '../../sheets/sheet-numbers.ts';
import { fill, type SheetTexts } from '../../sheets/texts/sheet-texts.ts';
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

export const bar = (pressure_MPa: number): string => printed(pressure_MPa * 10);

/** The test as planned. */
export function testFacts({ pack }: TestSheetSource, { testSheet, words, notEntered }: SheetTexts): TestFact[] {
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
      value: entered ? `${pressure}; ${fill(testSheet.asEntered, { ...entered })}` : pressure,
      strong: true,
    },
    { label: testSheet.hold, value: fill(testSheet.holdLine, { minutes: printed(plan.hold_min) }), strong: true },
    { label: testSheet.planned, value: pack.plannedOn ?? notEntered },
    { label: testSheet.state, value: testSheet.states[pack.state] },
  ];
}

/**
 * The distance to keep: computed for gas where its volume is known, never assumed where it is not.
 * Source: ASME PCC-2 article 501, the later form, which keeps people farther away.
 */
export function exclusion({ pack, volume_m3 }: TestSheetSource, { testSheet }: SheetTexts): TestFact[] {
  const label = testSheet.exclusion;
  if (!GAS.includes(pack.plan.way)) return [{ label, value: testSheet.exclusionLiquid, write: true }];
  if (volume_m3 === null) return [{ label, value: testSheet.exclusionMissing, strong: true, write: true }];
  const found = pneumaticTest({ testPressure_MPa: pack.plan.pressure_MPa, volume_m3, method: METHOD });
  const value = fill(testSheet.exclusionComputed, {
    distance: String(Math.ceil(found.distance_m)),
    volume: dimension(volume_m3),
    energy: printed(found.storedEnergy_J / 1e6),
  });
  return [
    { label, value, strong: true },
    { label: '', value: [`ASME ${METHOD}, article 501`, ...found.warnings.map(({ message }) => message)].join('. ') },
  ];
}

/** What is signed before pressure: as recorded, or to be written. */
export function releaseFacts({ pack, timeZone }: TestSheetSource, texts: SheetTexts): TestFact[] {
  const { testSheet } = texts;
  const { released } = pack;
  const sure = (label: string, done: boolean | undefined): TestFact =>
    released ? { label, value: done ? testSheet.yes : testSheet.no } : { label, value: '', write: true };
  return [
    sure(testSheet.boundaryWalked, released?.boundaryWalked),
    sure(testSheet.blindsRated, released?.blindsRated),
    sure(testSheet.reliefValvesOut, released?.reliefValvesOut),
    released
      ? { label: testSheet.metalTemperature, value: `${dimension(released.metalTemperature_C)} °C` }
      : { label: testSheet.metalTemperature, value: '', write: true },
    released
      ? {
          label: testSheet.releasedBy,
          value: fill(testSheet.releasedLine, {
            name: released.by?.name ?? texts.someone,
            at: localTime(released.at, timeZone),
          }),
        }
      : { label: testSheet.releasedBy, value: testSheet.toSign, write: true },
  ];
}

/** Gauges with their calibration in force, or the lack of it. */
export const gaugeRow = (gauge: SheetGauge, { testSheet, none }: SheetTexts): string[] => {
  const sound = gauge.failedOn === null && gauge.calibratedOn !== null;
  const range = `0–${dimension(gauge.scaleMaximum)} ${gauge.scaleUnit}`;
  const divided = gauge.scaleDivision === null ? range : `${range} / ${dimension(gauge.scaleDivision)}`;
  const number = gauge.certificateNumber ?? none;
  const certificate = gauge.provisional ? fill(testSheet.provisional, { number }) : number;
  return [
    gauge.tag,
    divided,
    sound ? (gauge.calibratedOn ?? none) : testSheet.noCalibration,
    sound ? (gauge.validThrough ?? none) : none,
    sound ? certificate : none,
  ];
};

/** Blinds with where they are now. */
export const blindRow = (blind: SheetBlind, { testSheet, words, notEntered }: SheetTexts): string[] => [
  blind.number,
  words.blind[blind.type],
  blind.rating ?? notEntered,
  blind.thickness_mm === null ? notEntered : `${dimension(blind.thickness_mm)} mm`,
  blind.joint ?? notEntered,
  blind.out ? testSheet.blindOut : blind.in ? testSheet.blindIn : testSheet.notIn,
];
