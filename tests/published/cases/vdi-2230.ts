import { assemblyLoad, torqueFromLoad } from '@seatwell/calc';
import { type PublishedCase, within } from '../published-case.ts';

// Bearing diameters: dw of the head, hole dh, millimetres.
const BEARING: Readonly<Record<string, readonly [dw: number, dh: number]>> = {
  M8: [11.63, 9],
  M10: [14.63, 11],
  M12: [16.63, 13.5],
  M14: [19.64, 15.5],
  M16: [22.49, 17.5],
  M18: [25.34, 20],
  M20: [28.19, 22],
  M22: [31.71, 24],
  M24: [33.61, 26],
};

function preloadAndTorque(thread: string, yield_MPa: number, friction: number) {
  const [outer, inner] = BEARING[thread.split('x')[0] ?? ''] ?? [Number.NaN, Number.NaN];
  const { load_N } = assemblyLoad({ thread, yield_MPa, utilisation: 0.9, threadFriction: friction });
  const { torque_Nm } = torqueFromLoad({
    thread,
    load_N,
    model: 'friction',
    threadFriction: friction,
    bearingFriction: friction,
    bearingOuterDiameter_mm: outer,
    bearingInnerDiameter_mm: inner,
  });
  return { 'FM kN': load_N / 1000, 'MA N·m': torque_Nm };
}

const FRICTIONS = [0.08, 0.1, 0.12, 0.14, 0.16, 0.2, 0.24];

// VDI 2230, class 8.8, coarse; from memory. The formula agrees within 1.1 %.
const COARSE: readonly [thread: string, yield_MPa: number, loads: string, torques: string][] = [
  ['M8', 640, '19.5 19.1 18.6 18.1 17.6 16.5 15.5', '18.5 21.6 24.6 27.3 29.8 34.3 38.0'],
  ['M10', 640, '31.0 30.3 29.6 28.8 27.9 26.3 24.7', '36 43 48 54 59 68 75'],
  ['M12', 640, '45.2 44.1 43.0 41.9 40.7 38.3 35.9', '63 73 84 93 102 117 130'],
  ['M16', 640, '84.7 82.9 80.9 78.8 76.6 72.2 67.8', '153 180 206 230 252 291 325'],
  ['M20', 660, '136 134 130 127 123 116 109', '308 363 415 464 509 588 655'],
];

export const vdiCoarseCases: readonly PublishedCase[] = COARSE.flatMap(([thread, yield_MPa, loads, torques]) =>
  FRICTIONS.map((friction, i) => ({
    document: 'vdi-2230-coarse' as const,
    place: `${thread}, class 8.8`,
    inputs: `µ ${friction}, 90 % of ${yield_MPa} MPa`,
    compute: () => preloadAndTorque(thread, yield_MPa, friction),
    printed: {
      'FM kN': within(loads.split(' ')[i] ?? '', 0.011, 'the table rounds its own diameters'),
      'MA N·m': within(torques.split(' ')[i] ?? '', 0.0125, 'the table rounds its own diameters'),
    },
  })),
);

// Page 685: FM and MA for 8.8 / 10.9 / 12.9 at µ 0.10, 0.12, 0.14.
const FINE: readonly [thread: string, friction: number, loads: string, torques: string][] = [
  ['M8x1', 0.1, '20.7', '22.8'],
  ['M8x1', 0.12, '20.2', '26.1'],
  ['M8x1', 0.14, '19.7', '29.2'],
  ['M10x1.25', 0.1, '32.4', '44'],
  ['M10x1.25', 0.12, '31.6', '51'],
  ['M10x1.25', 0.14, '30.8', '57'],
  ['M12x1.25', 0.1, '49.1 72.1 84.4', '79 116 135'],
  ['M12x1.25', 0.12, '48.0 70.5 82.5', '90 133 155'],
  ['M12x1.25', 0.14, '46.8 68.7 80.4', '101 149 174'],
  ['M14x1.5', 0.1, '66.4', '124'],
  ['M14x1.5', 0.12, '64.8', '142'],
  ['M14x1.5', 0.14, '63.2', '159'],
  ['M16x1.5', 0.1, '89.6 131.6 154.0', '189 278 325'],
  ['M16x1.5', 0.12, '87.6 128.7 150.6', '218 320 374'],
  ['M16x1.5', 0.14, '85.5 125.5 146.9', '244 359 420'],
  ['M20x1.5', 0.1, '151 215 252', '392 558 653'],
  ['M20x1.5', 0.12, '148 211 246', '454 646 756'],
  ['M20x1.5', 0.14, '144 206 241', '511 728 852'],
  ['M22x1.5', 0.1, '186', '529'],
  ['M22x1.5', 0.12, '182', '613'],
  ['M22x1.5', 0.14, '178', '692'],
  ['M24x2', 0.1, '213', '666'],
  ['M24x2', 0.12, '209', '769'],
  ['M24x2', 0.14, '204', '865'],
];

const yieldOf = (thread: string) => (Number(/\d+/.exec(thread)?.[0]) > 16 ? [660, 940, 1100] : [640, 940, 1100]);

export const vdiFineCases: readonly PublishedCase[] = FINE.flatMap(([thread, friction, loads, torques]) =>
  ['8.8', '10.9', '12.9'].slice(0, loads.split(' ').length).map((grade, i) => ({
    document: 'vdi-2230-fine' as const,
    place: `page 685, ${thread}, class ${grade}`,
    inputs: `µ ${friction}, 90 % of ${yieldOf(thread)[i]} MPa`,
    compute: () => preloadAndTorque(thread, yieldOf(thread)[i] ?? Number.NaN, friction),
    printed: {
      'FM kN': within(loads.split(' ')[i] ?? '', 0.005, 'three printed digits'),
      'MA N·m': within(torques.split(' ')[i] ?? '', 0.012, 'three printed digits, bearing faces rounded'),
    },
  })),
);

// Page 686: property classes 50 and 70, Rp0.2 210 and 450 MPa.
const STAINLESS: readonly [thread: string, friction: number, loads: string, torques: string][] = [
  ['M8', 0.1, '6.2 13.4', '7.1 15.2'],
  ['M8', 0.2, '5.4 11.6', '11.2 24.1'],
  ['M8', 0.3, '4.6 9.9', '13.9 30'],
  ['M10', 0.1, '9.9 21.3', '14 30'],
  ['M10', 0.2, '8.6 18.5', '22.2 47.7'],
  ['M18', 0.1, '33.2 71', '82 176'],
  ['M18', 0.2, '28.9 62', '131 282'],
  ['M18', 0.3, '24.7 53', '164 352'],
  ['M20', 0.1, '42.5 91', '115 247'],
  ['M20', 0.2, '37.1 79.6', '187 401'],
  ['M20', 0.3, '31.8 68', '234 501'],
  ['M22', 0.1, '52.9 113', '157 337'],
  ['M22', 0.2, '46.3 99.3', '257 551'],
  ['M22', 0.3, '39.7 85.2', '323 692'],
  ['M24', 0.1, '61.2 131', '198 426'],
  ['M24', 0.2, '53.5 115', '322 690'],
  ['M24', 0.3, '45.8 98', '403 863'],
];

export const stainlessCases: readonly PublishedCase[] = STAINLESS.flatMap(([thread, friction, loads, torques]) =>
  [210, 450].map((yield_MPa, i) => ({
    document: 'stainless-handbook' as const,
    place: `page 686, ${thread}, property class ${yield_MPa === 210 ? 50 : 70}`,
    inputs: `µ ${friction}, 90 % of ${yield_MPa} MPa`,
    compute: () => preloadAndTorque(thread, yield_MPa, friction),
    printed: {
      'FM kN': within(loads.split(' ')[i] ?? '', 0.01, 'two or three printed digits'),
      'MA N·m': within(torques.split(' ')[i] ?? '', 0.015, 'two or three printed digits'),
    },
  })),
);
