import { findFlange, pneumaticTest, standardStudLength, tensioner } from '@seatwell/calc';
import { type PublishedCase, printed, within } from '../published-case.ts';

const transfer = (length_mm: number) =>
  tensioner({
    thread: 'M36',
    residualLoad_N: 100_000,
    effectiveLength_mm: length_mm,
    hydraulicArea_mm2: 3000,
    coverage: 1,
    yield_MPa: 720,
  }).loadTransferFactor;

export const tensionerCases: readonly PublishedCase[] = [
  {
    document: 'tensioner-note',
    place: 'LTF = max(1.01 + D/L, 1.10)',
    inputs: 'D 36 mm; L 150, 300 and 36·4 mm',
    compute: () => ({ '36/150': transfer(150), '36/300': transfer(300), 'L/D 4': transfer(144) }),
    printed: { '36/150': printed('1.250'), '36/300': printed('1.130'), 'L/D 4': printed('1.26') },
  },
];

const PNEUMATIC: readonly [pressure: number, volume: number, answers: Record<string, string>][] = [
  [1, 10, { 'E MJ': '13.63', 'TNT kg': '3.193', 'R 2008 m': '29.45', 'R later m': '37.11' }],
  [1.1, 50, { 'E MJ': '76.17', 'TNT kg': '17.85', 'R 2008 m': '52.27', 'R later m': '65.86' }],
];

export const pneumaticCases: readonly PublishedCase[] = PNEUMATIC.map(([testPressure_MPa, volume_m3, answers]) => ({
  document: 'pcc-2-501' as const,
  place: 'article 501 equations, exponent 0.286',
  inputs: `${testPressure_MPa} MPa gauge, ${volume_m3} m³`,
  compute: () => {
    const early = pneumaticTest({ testPressure_MPa, volume_m3, method: 'PCC-2-2008' });
    const later = pneumaticTest({ testPressure_MPa, volume_m3, method: 'PCC-2-2018' });
    return {
      'E MJ': early.storedEnergy_J / 1e6,
      'TNT kg': early.tntEquivalent_kg,
      'R 2008 m': early.scaledDistance_m,
      'R later m': later.scaledDistance_m,
    };
  },
  printed: Object.fromEntries(Object.entries(answers).map(([name, text]) => [name, printed(text)])),
}));

// ASME B16.5 annex C, raised face, from memory.
const STUDS: readonly [size: string, rating: string, inches: string, millimetres: string][] = [
  ['NPS2', '150', '3.25', '85'],
  ['NPS6', '150', '4.00', '100'],
  ['NPS12', '150', '4.75', '120'],
  ['NPS4', '300', '4.50', '115'],
  ['NPS10', '300', '6.25', '160'],
  ['NPS12', '300', '6.75', '170'],
];

export const studCases: readonly PublishedCase[] = STUDS.map(([size, rating, inches, millimetres]) => ({
  document: 'b16-5-studs' as const,
  place: `class ${rating} ${size}`,
  inputs: 'raised faces, rule of the annex; millimetre length of the table',
  compute: () => {
    const key = { standard: 'ASME-B16.5', size, rating };
    const { length_in, length_mm } = standardStudLength(key);
    return { 'length in': length_in, 'length mm': length_mm, 'table mm': findFlange(key).studLength_mm ?? Number.NaN };
  },
  printed: {
    'length in': within(inches, 0.0001, 'quarter inches'),
    'length mm': printed(millimetres),
    'table mm': printed(millimetres),
  },
}));
