import { placesOf } from './places.ts';

interface ComputedPass {
  readonly setValues_Nm: readonly number[];
  readonly steps: readonly { readonly bolt: number; readonly setValue: number }[];
}

export interface SetValue {
  /** from 1 */
  readonly pass: number;
  readonly torque_Nm: number;
  /** the places that take it: 1–6, 9 */
  readonly bolts: string;
}

/** What the tool is set to in computed passes and for which bolts, the highest of each pass first. */
export const setValuesOf = (passes: readonly ComputedPass[]): SetValue[] =>
  passes.flatMap((pass, index) =>
    pass.setValues_Nm
      .map((torque_Nm, setValue) => ({
        pass: index + 1,
        torque_Nm,
        bolts: placesOf(pass.steps.filter((step) => step.setValue === setValue).map(({ bolt }) => bolt)),
      }))
      .reverse(),
  );
