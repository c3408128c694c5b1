import type { JointState } from '../state.ts';

/** Of a joint of which nothing is known yet: found in the field, or a row of a register that says no more than its tag. */
export const unknownSpecification: JointState['specification'] = {
  flange: { standard: 'custom', size: '', rating: '', facing: 'other' },
  bolting: null,
  gasket: {
    family: 'none',
    detail: null,
    count: 1,
    contactInside_mm: null,
    contactOutside_mm: null,
    thickness_mm: null,
  },
  clampedParts: [],
  service: {
    medium: null,
    pressure_MPa: null,
    pressureAsEntered: null,
    temperature_C: null,
    temperatureAsEntered: null,
  },
  hotExposed: false,
};
