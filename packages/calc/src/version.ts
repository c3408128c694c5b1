/** Version of the calculation: stored with each target, so that it can be recomputed and compared later. */
export const CALC_VERSION = '1.0.0';
