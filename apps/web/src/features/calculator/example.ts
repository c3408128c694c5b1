import type { Inputs } from './inputs.ts';

/** A whole calculation to look at. Its gasket and lubricant values are named as examples: not for work. */
export const example: Inputs = {
  standard: 'ASME-B16.5',
  size: 'NPS8',
  rating: '300',
  family: 'spiral-wound',
  seating_MPa: '69',
  operating_MPa: '48',
  target_MPa: '125',
  maximum_MPa: '300',
  gasketSource: 'Example, not for work: enter the maker’s or the site’s tested data',
  grade: 'B7',
  condition: 'new',
  pressure_MPa: '2',
  temperature_C: '200',
  testPressure_MPa: '3',
  friction: 'nut-factor',
  nutFactor: '0.16',
  lubricantSource: 'Example, not for work: enter the lubricant’s tested nut factor',
  method: 'torque-wrench',
  area: 'root',
  leastShare_percent: '20',
  mostShare_percent: '70',
  passes: '30 70 100',
  pattern: 'legacy',
  numbering: 'clockwise',
};
