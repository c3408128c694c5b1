import { convert, flangeStress, gasketLoads, requiredBoltArea } from '@seatwell/calc';
import { type PublishedCase, printed, within } from '../published-case.ts';

const MM = 25.4;
const psi = (value: number) => convert('pressure', value, 'psi', 'MPa');
const toPsi = (value_MPa: number) => convert('pressure', value_MPa, 'MPa', 'psi');
const toPounds = (value_N: number) => convert('force', value_N, 'N', 'lbf');
const toInchPounds = (value_Nm: number) => convert('torque', value_Nm, 'N·m', 'lbf·in');
const PI_REASON = 'the sheet computes with π = 3.14 (0.05 %) and rounds b and G';

function weldNeckSheet(): Readonly<Record<string, number>> {
  const loads = gasketLoads({
    gasketOutside_mm: 14.75 * MM,
    gasketInside_mm: 13.375 * MM,
    m: 3,
    y_MPa: psi(10_000),
    pressure_MPa: psi(104),
    moment_Nm: convert('torque', 50_000, 'lbf·in', 'N·m'),
    equivalentPressureInGasketTerm: true,
  });
  const boltArea_mm2 = 12 * (Math.PI / 4) * (0.731 * MM) ** 2;
  const bolts = requiredBoltArea({
    operatingBoltLoad_N: loads.operatingBoltLoad_N,
    seatingBoltLoad_N: loads.seatingBoltLoad_N,
    boltAllowableOperating_MPa: psi(25_000),
    boltAllowableAmbient_MPa: psi(25_000),
    boltArea_mm2,
  });
  const stress = flangeStress({
    kind: 'integral',
    outsideDiameter_mm: 19 * MM,
    insideDiameter_mm: 12.25 * MM,
    boltCircle_mm: 17 * MM,
    thickness_mm: 1.19 * MM,
    hub: { length_mm: 3 * MM, smallThickness_mm: 0.25 * MM, largeThickness_mm: 1.065 * MM },
    loads: {
      reactionDiameter_mm: loads.reactionDiameter_mm,
      equivalentPressure_MPa: loads.equivalentPressure_MPa,
      operatingBoltLoad_N: loads.operatingBoltLoad_N,
      seatingDesignLoad_N: bolts.seatingDesignLoad_N,
    },
    allowables: {
      flangeOperating_MPa: psi(20_000),
      flangeSeating_MPa: psi(20_000),
      elasticModulusOperating_MPa: psi(29e6),
      elasticModulusSeating_MPa: psi(29e6),
    },
  });
  return {
    'b in': loads.effectiveWidth_mm / MM,
    'G in': loads.reactionDiameter_mm / MM,
    'Wm1 lb': toPounds(loads.operatingBoltLoad_N),
    'Wm2 lb': toPounds(loads.seatingBoltLoad_N),
    'Am in²': bolts.requiredArea_mm2 / MM ** 2,
    'Ab in²': boltArea_mm2 / MM ** 2,
    'W lb': toPounds(bolts.seatingDesignLoad_N),
    'Mo lb·in': toInchPounds(stress.momentOperating_Nm),
    'Mog lb·in': toInchPounds(stress.momentSeating_Nm),
    K: stress.K,
    T: stress.T,
    U: stress.U,
    Y: stress.Y,
    Z: stress.Z,
    F: stress.F ?? Number.NaN,
    V: stress.V ?? Number.NaN,
    'SH operating psi': toPsi(stress.operating.longitudinalHub_MPa),
    'SR operating psi': toPsi(stress.operating.radial_MPa),
    'ST operating psi': toPsi(stress.operating.tangential_MPa),
    'SH seating psi': toPsi(stress.seating.longitudinalHub_MPa),
    'SR seating psi': toPsi(stress.seating.radial_MPa),
    'ST seating psi': toPsi(stress.seating.tangential_MPa),
    'bolt area suffices': bolts.ok ? 1 : 0,
  };
}

const sheet = (text: string, share = 0.002) => within(text, share, PI_REASON);

export const codeLoadCases: readonly PublishedCase[] = [
  {
    document: 'app-2-sheet',
    place: 'whole sheet',
    inputs:
      'A 19, B 12.25, C 17, t 1.19, h 3, g0 0.25, g1 1.065 in, 12 bolts of root diameter 0.731 in, gasket 14.75/13.375 in, m 3, y 10 000 psi, P 104 psi, M 50 000 in·lb, Sa = Sb = 25 000 psi',
    compute: weldNeckSheet,
    printed: {
      'b in': sheet('0.2932'),
      'G in': sheet('14.16'),
      'Wm1 lb': sheet('45648'),
      'Wm2 lb': sheet('130376'),
      'Am in²': sheet('5.215'),
      'Ab in²': sheet('5.034'),
      'W lb': sheet('128109'),
      'Mo lb·in': sheet('78093', 0.004),
      'Mog lb·in': sheet('181678', 0.004),
      K: printed('1.55102'),
      T: printed('1.68859'),
      U: printed('5.05244'),
      Y: printed('4.59773'),
      Z: printed('2.42281'),
      F: printed('0.55138'),
      V: printed('0.02868'),
      'SH operating psi': sheet('6233', 0.004),
      'SR operating psi': sheet('7482', 0.004),
      'ST operating psi': sheet('2570', 0.004),
      'SH seating psi': sheet('14501', 0.004),
      'SR seating psi': sheet('17407', 0.004),
      'ST seating psi': sheet('5979', 0.004),
      'bolt area suffices': printed('0'),
    },
  },
  {
    document: 'app-3-ring-joint',
    place: 'bolt load',
    inputs:
      'G 9 in, w 0.733 in, b0 = w/8, m 5.5, y 18 000 psi, P 12 038 psi, 16 bolts of 1.424 in², Sa = Sb 87 150 psi',
    compute: () => {
      const loads = gasketLoads({
        gasketOutside_mm: (9 + 0.733) * MM,
        gasketInside_mm: (9 - 0.733) * MM,
        m: 5.5,
        y_MPa: psi(18_000),
        pressure_MPa: psi(12_038),
        facing: 'ring-joint',
      });
      const bolts = requiredBoltArea({
        operatingBoltLoad_N: loads.operatingBoltLoad_N,
        seatingBoltLoad_N: loads.seatingBoltLoad_N,
        boltAllowableOperating_MPa: psi(87_150),
        boltAllowableAmbient_MPa: psi(87_150),
        boltArea_mm2: 16 * 1.424 * MM ** 2,
      });
      return { 'Am in²': bolts.requiredArea_mm2 / MM ** 2, 'W lb': toPounds(bolts.seatingDesignLoad_N) };
    },
    printed: { 'Am in²': sheet('12.71726', 0.001), 'W lb': sheet('1546967', 0.001) },
  },
  {
    document: 'nptel-lecture-15',
    place: 'loose flange',
    inputs: 'gasket 1.818/1.974 m, p 2.2 MPa, y 20 MPa, m 2.5, allowable 120 MPa; the sheet takes b = 2.5·√b0',
    compute: () => {
      const loads = gasketLoads({
        gasketOutside_mm: 1974,
        gasketInside_mm: 1818,
        m: 2.5,
        y_MPa: 20,
        pressure_MPa: 2.2,
      });
      // The sheet's factor 2.5 in place of the code's 2.52 (0.8 % in b).
      const b_mm = (loads.effectiveWidth_mm * 2.5) / 2.52;
      const G_mm = 1974 - 2 * b_mm;
      const W_N = (Math.PI / 4) * G_mm ** 2 * 2.2 + 2 * b_mm * Math.PI * G_mm * 2.5 * 2.2;
      return { 'b mm': b_mm, 'G m': G_mm / 1000, 'W MN': W_N / 1e6, 'Ao m²': W_N / 120 / 1e6 };
    },
    printed: {
      'b mm': printed('15.61'),
      'G m': printed('1.94278'),
      'W MN': printed('7.57'),
      'Ao m²': within('0.063083', 0.001, 'the sheet rounds b'),
    },
  },
  {
    document: 'tongue-groove-sheet',
    place: 'loads and moments',
    inputs:
      'loose flange A 596, B 420, C 540 mm, reaction at the mean 447 mm, P 5 kgf/cm², m 3, y 4495 psi, bolts 1968/1960 kgf/cm², 34.7282 cm² of bolts; the sheet rounds no step. b0 12.5 mm',
    compute: () => {
      const kgf = 9.80665;
      const pressure_MPa = (5 * kgf) / 100;
      const loads = gasketLoads({
        gasketOutside_mm: 447 + 25,
        gasketInside_mm: 447 - 25,
        m: 3,
        y_MPa: psi(4495),
        pressure_MPa,
      });
      // The sheet keeps the reaction at the mean diameter where the code moves it outwards to outside − 2·b.
      const b_mm = loads.effectiveWidth_mm;
      const H_N = (Math.PI / 4) * 447 ** 2 * pressure_MPa;
      const Wm1_N = H_N + 2 * b_mm * Math.PI * 447 * 3 * pressure_MPa;
      const Wm2_N = Math.PI * b_mm * 447 * psi(4495);
      const bolts = requiredBoltArea({
        operatingBoltLoad_N: Wm1_N,
        seatingBoltLoad_N: Wm2_N,
        boltAllowableOperating_MPa: (1960 * kgf) / 100,
        boltAllowableAmbient_MPa: (1968 * kgf) / 100,
        boltArea_mm2: 3472.82,
      });
      const stress = flangeStress({
        kind: 'loose',
        outsideDiameter_mm: 596,
        insideDiameter_mm: 420,
        boltCircle_mm: 540,
        thickness_mm: 47,
        loads: {
          reactionDiameter_mm: 447,
          equivalentPressure_MPa: pressure_MPa,
          operatingBoltLoad_N: Wm1_N,
          seatingDesignLoad_N: bolts.seatingDesignLoad_N,
        },
        allowables: {
          flangeOperating_MPa: 138,
          flangeSeating_MPa: 138,
          elasticModulusOperating_MPa: 190_000,
          elasticModulusSeating_MPa: 200_000,
        },
      });
      const toKgfCm = (moment_Nm: number) => (moment_Nm * 100) / kgf;
      return {
        'b mm': b_mm,
        'Wm1 kgf': Wm1_N / kgf,
        'Wm2 kgf': Wm2_N / kgf,
        'Am cm²': bolts.requiredArea_mm2 / 100,
        'W kgf': bolts.seatingDesignLoad_N / kgf,
        'Mo kgf·cm': toKgfCm(stress.momentOperating_Nm),
        'Mog kgf·cm': toKgfCm(stress.momentSeating_Nm),
        K: stress.K,
        T: stress.T,
        U: stress.U,
        Y: stress.Y,
        Z: stress.Z,
      };
    },
    printed: {
      'b mm': printed('8.91'),
      'Wm1 kgf': within('11599.84', 0.001, 'pound and kilogram conversions of the sheet'),
      'Wm2 kgf': within('39539.14', 0.001, 'pound and kilogram conversions of the sheet'),
      'Am cm²': within('20.0910', 0.001, 'pound and kilogram conversions of the sheet'),
      'W kgf': within('53942.08', 0.001, 'pound and kilogram conversions of the sheet'),
      'Mo kgf·cm': within('63911.5', 0.001, 'pound and kilogram conversions of the sheet'),
      'Mog kgf·cm': within('250830.7', 0.001, 'pound and kilogram conversions of the sheet'),
      K: printed('1.42'),
      T: printed('1.75'),
      U: printed('6.28'),
      Y: printed('5.71'),
      Z: printed('2.97'),
    },
  },
  {
    document: 'ring-flange-report',
    place: 'gasket width',
    inputs: 'gasket 650/578 mm, VIII-1 2017',
    compute: () => {
      const loads = gasketLoads({ gasketOutside_mm: 650, gasketInside_mm: 578, m: 0, y_MPa: 0, pressure_MPa: 0 });
      return { 'b mm': loads.effectiveWidth_mm };
    },
    printed: { 'b mm': printed('10.691') },
  },
];
