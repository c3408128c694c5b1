export {
  type AlignmentRequest,
  alignmentLimits,
  judgeAlignment,
  type Limit,
  SHAFT_MOVEMENT_LIMIT_MM,
} from './alignment/alignment-limits.ts';
export { type FaceLimits, faceLimits, judgeImperfection } from './alignment/face-limits.ts';
export { type FaceReadings, type Judgement, judgeFace } from './alignment/judge-face.ts';
export {
  type AlignmentReadings,
  type FlangeOutside,
  flangeOutside,
  judgeAlignmentReadings,
} from './alignment/judge-joint.ts';
export { blindThickness } from './blind/blind-thickness.ts';
export { BOLTING_GRADES, type BoltingGrade, boltingGrade, nutPairing } from './bolting/bolting-grade.ts';
export { findNut, type Nut, nutOf } from './bolting/nuts.ts';
export { COATING_LIMITS } from './bolting/pairing.ts';
export { findWasher, type Washer, washerOf } from './bolting/washers.ts';
export { flangeStress } from './code-loads/flange-stress.ts';
export type { FlangeStress, FlangeStressRequest } from './code-loads/flange-stress-request.ts';
export {
  type GasketLoads,
  type GasketLoadsRequest,
  gasketLoads,
  requiredBoltArea,
} from './code-loads/gasket-loads.ts';
export { type ElongationRequest, elongation, loadFromElongation, turnOfNut } from './elongation/elongation.ts';
export { type Flange, type FlangeKey, findFlange, listFlangeRatings, listFlangeSizes } from './flanges/find-flange.ts';
export { type WeldNeckHub, weldNeckHub } from './flanges/hub-dimensions.ts';
export {
  FLANGE_STANDARDS,
  type FlangeStandard,
  flangeRating,
  flangeSize,
  flangeStandard,
} from './flanges/keys.ts';
export { pressureRating, type RatingAnswer, ratingCheck } from './flanges/rating-check.ts';
export {
  GASKET_FAMILIES,
  GASKET_FAMILY_CODES,
  type GasketFamily,
  type GasketFamilyCode,
  gasketFamily,
} from './gaskets/families.ts';
export {
  findGasketDimensions,
  type GasketDimensions,
  type GasketFactorRow,
  gasketDimensions,
  gasketFactors,
} from './gaskets/gasket-data.ts';
export {
  mayRetighten,
  type RetighteningRequest,
  type RetighteningRule,
  retighteningRule,
} from './gaskets/retightening.ts';
export {
  type EnteredRing,
  type GrooveReading,
  judgeRingGroove,
  type RingJoint,
  ringJoint,
} from './gaskets/ring-groove.ts';
export { type KitLine, kitList } from './kit/kit-list.ts';
export { type PneumaticTest, type PneumaticTestRequest, pneumaticTest } from './pressure-test/pneumatic.ts';
export {
  gasPressureAtTemperature,
  gaugeRange,
  liquidPressureRise,
  metalTemperatureMargin,
  pneumaticUpperLimit,
  sensitiveLeakTestPressure,
  strengthTestPressure,
  tightnessTestPressure,
} from './pressure-test/test-pressure.ts';
export { CalcRefusal, type RefusalItem } from './refusal.ts';
export {
  DEFAULT_PASS_PERCENTS,
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
export { wrenchTime } from './sequence/wrench-time.ts';
export * from './simulation/index.ts';
export { SOURCES, type SourceDocument, type SourceKey } from './sources.ts';
export { standardStudLength } from './stud-length/standard-stud-length.ts';
export { type StudLength, type StudLengthRequest, studLength } from './stud-length/stud-length.ts';
export { type ApprovedStress, type CrewTableRow, crewTable } from './target/crew-table.ts';
export type { FlangeStressAtTarget } from './target/flange-at-target.ts';
export { METHOD_SCATTER, TIGHTENING_METHODS, type TighteningMethod } from './target/methods.ts';
export type {
  GasketLimits,
  TargetAnswer,
  TargetRequest,
  ThermalInput,
  WashersInput,
  WindowLimit,
} from './target/request.ts';
export { type Sensitivity, targetSensitivities } from './target/sensitivities.ts';
export { type TargetTableRow, targetTable } from './target/target-table.ts';
export { targetTensioning } from './target/target-tensioning.ts';
export { targetWindow } from './target/target-window.ts';
export { type WeakJoint, weakStandardJoints } from './target/weak-joints.ts';
export { tensionerGroupLoads, tensioningGroups } from './tensioner/group-pressures.ts';
export { type TensionerAnswer, type TensionerRequest, tensioner } from './tensioner/tensioner.ts';
export { type TensioningPlan, type TensioningPlanRequest, tensioningPlan } from './tensioner/tensioning-plan.ts';
export { inchFraction, parseThread, type ThreadDesignation } from './threads/designation.ts';
export { type ThreadGeometry, threadGeometry } from './threads/geometry.ts';
export { assemblyLoad, torsionFactor } from './torque/assembly-load.ts';
export { type Lubricant, threadFrictionOf } from './torque/friction.ts';
export { type HydraulicWrench, hydraulicPressure, type PressureTorquePair } from './torque/hydraulic-pressure.ts';
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
export { torqueOrLoad } from './torque/torque-or-load.ts';
export { celsiusOf, convert, fahrenheitOf, type Quantity, UNITS } from './units.ts';
export { CALC_VERSION } from './version.ts';
export type { Explained, Warning, WorkingStep } from './working.ts';
