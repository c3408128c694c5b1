import { z } from 'zod';
import { calcExplainable, calcExplained } from './common.ts';

/** One of the two; the answer holds both. */
const loadOrTorque = { load_N: z.number().exactOptional(), torque_Nm: z.number().exactOptional() };

export const calcTorqueRequest = z.discriminatedUnion('model', [
  z.strictObject({
    thread: z.string(),
    ...loadOrTorque,
    model: z.literal('nut-factor'),
    nutFactor: z.number(),
    ...calcExplainable,
  }),
  z.strictObject({
    thread: z.string(),
    ...loadOrTorque,
    model: z.literal('friction'),
    threadFriction: z.number(),
    bearingFriction: z.number(),
    bearingOuterDiameter_mm: z.number(),
    bearingInnerDiameter_mm: z.number(),
    ...calcExplainable,
  }),
]);

export const calcTorqueResponse = z.object({ torque_Nm: z.number(), load_N: z.number(), ...calcExplained });

export const calcAssemblyLoadRequest = z.strictObject({
  thread: z.string(),
  yield_MPa: z.number(),
  utilisation: z.number().describe('share of yield, 0 to 1'),
  threadFriction: z.number(),
  ...calcExplainable,
});

export const calcAssemblyLoadResponse = z.object({ load_N: z.number(), ...calcExplained });
