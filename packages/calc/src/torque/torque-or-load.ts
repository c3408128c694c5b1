import { refuse } from '../refusal.ts';
import type { Explainable } from '../working.ts';
import { loadFromTorque, type TorqueAnswer, type TorqueModel, torqueFromLoad } from './torque.ts';

/**
 * Torque from a load, or the load from a torque, whichever is missing.
 * @param input.load_N or input.torque_Nm, not both
 * @throws CalcRefusal `load-or-torque`, and those of torqueFromLoad
 */
export function torqueOrLoad(
  input: {
    readonly thread: string;
    readonly load_N?: number;
    readonly torque_Nm?: number;
  } & TorqueModel &
    Explainable,
): TorqueAnswer {
  const { load_N, torque_Nm, ...rest } = input;
  if (load_N !== undefined && torque_Nm === undefined) return torqueFromLoad({ ...rest, load_N });
  if (torque_Nm !== undefined && load_N === undefined) return loadFromTorque({ ...rest, torque_Nm });
  refuse('load_N', 'load-or-torque', 'Give either load_N for the torque, or torque_Nm for the load.');
}
