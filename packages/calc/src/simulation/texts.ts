import type { Warning } from '../working.ts';

/** Limits of the simulation, to be printed beside every result. The keys are stable for translation. */
export const SIMULATION_LIMITS = {
  'simulation.limits.overrides': 'A measured bolt load always overrides this simulation.',
  'simulation.limits.elastic': 'Bolts and flanges are taken as elastic.',
  'simulation.limits.pair': 'Identical weld-neck flanges, unless the ring parameters say otherwise.',
  'simulation.limits.cold': 'No pressure, temperature, pipe forces or embedment.',
  'simulation.limits.gasket':
    'Gasket curves are engineering estimates unless the site has entered measured EN 13555 data.',
  'simulation.limits.band':
    'Lowest loads move by 10 to 20 points with gasket data and guide-ring contact: read the band, and do not ' +
    'trust close differences between patterns.',
  'simulation.limits.validated':
    'Checked against closed forms and a 3-D simulation; no published table of bolt loads per step was available.',
  'simulation.limits.purpose': 'It ranks patterns and plans loads; it is no load certificate.',
} as const;

export type SimulationLimit = keyof typeof SIMULATION_LIMITS;

/** Warning on a joint of four bolts. */
export const FOUR_BOLTS: Warning = {
  code: 'four-bolts-not-determined',
  message:
    'A flange with four bolts is nearly rigid and its ring numbers are only weakly determined: no number of ' +
    'passes is given for it.',
};

/** Warning on a gasket beyond the last point of its curve. */
export function beyondCurve(stress_MPa: number, end_MPa: number): Warning {
  return {
    code: 'gasket-beyond-curve',
    message:
      `The gasket reaches ${stress_MPa.toFixed(0)} MPa; its curve ends at ${end_MPa} MPa. Beyond that the last ` +
      'slope is carried on: use a lower target or enter measured data.',
  };
}

/** Warning on bolts that end above the limit because no nut is turned back. */
export function aboveLimit(highest_percent: number, limit_percent: number): Warning {
  return {
    code: 'bolt-stays-above-limit',
    message:
      `One bolt stays at ${highest_percent.toFixed(0)} % of target, above ${100 + limit_percent} %: further ` +
      'passes do not lower it, because nuts are not backed off.',
  };
}

/** Warning on a ring fitted poorly. */
export const POOR_FIT: Warning = {
  code: 'ring-fit-poor',
  message: 'The ring of this flange reproduces its bolt-to-bolt influence only within 9 %: read the answer with care.',
};
