import { assemblyLoad, torqueFromLoad } from '@seatwell/calc';
import { type PublishedCase, within } from '../published-case.ts';

// Bearing diameters: dw of the head, hole dh, millimetres.
const BEARING: Readonly<Record<string, readonly [dw: number, dh: number]>> = {
  M8: [11.63, 9],
  M10: [14.63, 11],
  M12: [16.63, 13.5],
  M14: [19.64, 15.5],
  M16: [22.49, 17.5],
  M20: [28.19, 22],
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
  ['M12x1.25', 0.1, '49.1 72.1 84.4', '79 116 135'],
  ['M12x1.25', 0.12, '48.0 70.5 82.5', '90 133 155'],
  ['M12x1.25', 0.14, '46.8 68.7 80.4', '101 149 174'],
  ['M16x1.5', 0.1, '89.6 131.6 154.0', '189 278 325'],
  ['M16x1.5', 0.12, '87.6 128.7 150.6', '218 320 374'],
  ['M16x1.5', 0.14, '85.5 125.5 146.9', '244 359 420'],
  ['M20x1.5', 0.1, '151 215 252', '392 558 653'],
  ['M20x1.5', 0.12, '148 211 246', '454 646 756'],
  ['M20x1.5', 0.14, '144 206 241', '511 728 852'],
];

const yieldOf = (thread: string) => (thread.startsWith('M20') ? [660, 940, 1100] : [640, 940, 1100]);

export const vdiFineCases: readonly PublishedCase[] = FINE.flatMap(([thread, friction, loads, torques]) =>
  ['8.8', '10.9', '12.9'].map((grade, i) => ({
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

// Page 686: property class 70, Rp0.2 450 MPa.
const STAINLESS: readonly [thread: string, friction: number, load: string, torque: string][] = [
  ['M10', 0.1, '21.3', '30'],
  ['M10', 0.2, '18.5', '47.7'],
  ['M20', 0.1, '91', '247'],
  ['M20', 0.2, '79.6', '401'],
  ['M20', 0.3, '68', '501'],
];

export const stainlessCases: readonly PublishedCase[] = STAINLESS.map(([thread, friction, load, torque]) => ({
  document: 'stainless-handbook' as const,
  place: `page 686, ${thread}, property class 70`,
  inputs: `µ ${friction}, 90 % of 450 MPa`,
  compute: () => preloadAndTorque(thread, 450, friction),
  printed: {
    'FM kN': within(load, 0.01, 'two or three printed digits'),
    'MA N·m': within(torque, 0.015, 'two or three printed digits'),
  },
}));
