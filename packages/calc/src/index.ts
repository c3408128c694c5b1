export {
  type Flange,
  type FlangeKey,
  findFlange,
  listFlangeRatings,
  listFlangeSizes,
} from './flanges/find-flange.ts';
export {
  FLANGE_STANDARDS,
  type FlangeStandard,
  flangeRating,
  flangeSize,
  flangeStandard,
} from './flanges/keys.ts';
export { CalcRefusal, type RefusalItem } from './refusal.ts';
export {
  SEQUENCE_PATTERNS,
  type SequencePattern,
  type SequenceRequest,
} from './sequence/request.ts';
export {
  type BoltPosition,
  type SequencePass,
  type TighteningSequence,
  tighteningSequence,
} from './sequence/tightening-sequence.ts';
export {
  inchFraction,
  parseThread,
  type ThreadDesignation,
} from './threads/designation.ts';
export { type ThreadGeometry, threadGeometry } from './threads/geometry.ts';
export { assemblyLoad, torsionFactor } from './torque/assembly-load.ts';
export {
  type FrictionModel,
  type LoadRequest,
  loadFromTorque,
  type NutFactorModel,
  type TorqueAnswer,
  type TorqueModel,
  type TorqueRequest,
  torqueFromLoad,
} from './torque/torque.ts';
export { CALC_VERSION } from './version.ts';
export type { Explained, Warning, WorkingStep } from './working.ts';
