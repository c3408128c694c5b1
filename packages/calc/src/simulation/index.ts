export {
  type Advice,
  type AdviceRequest,
  adviseTightening,
  type PatternAdvice,
  type PatternChoice,
  passesOf,
  USUAL_TIMES,
  usualChoices,
  type WrenchTimes,
} from './advice.ts';
export {
  answerSimulation,
  type CaseAnswer,
  type SimulatedCase,
  type SimulationAnswer,
  type SimulationAnswerRequest,
  type SimulationOptions,
} from './answer-simulation.ts';
export { type LoadBand, simulationBand, type ToolScatter } from './band.ts';
export { type ComputedLoads, type ComputedLoadsRequest, computedLoads } from './computed-loads.ts';
export { estimatedRing, type WeldNeckDimensions } from './estimated-ring.ts';
export type { GasketCurve } from './gasket-law.ts';
export { estimatedPasses, type Interaction, interactionOf } from './interaction.ts';
export type { SimulationJoint, SolverChoices } from './joint-model.ts';
export {
  type LongCase,
  type LongSimulation,
  type LongSimulationRequest,
  longSimulation,
  longSimulationRuns,
} from './long-simulation.ts';
export { type PassesNeeded, passesNeeded } from './passes-needed.ts';
export type { ComputedPass } from './plan-passes.ts';
export type { RingSection } from './ring-element.ts';
export { findRing, listRings, type PairKind, type RingPerFlange, type RingRow } from './ring-parameters.ts';
export {
  clockwiseRound,
  type LoadedStep,
  oneByOne,
  type PlainStep,
  type TighteningPass,
} from './sequence-steps.ts';
export {
  type LoadStatistics,
  type SimulatedStep,
  type Simulation,
  type SimulationRequest,
  simulateTightening,
} from './simulate.ts';
export {
  type PreparedJoint,
  type RingJointRequest,
  ringJoint,
  type SimulatedGasket,
  type StandardJointRequest,
  standardJoint,
} from './standard-joint.ts';
export { GASKET_CURVES, GASKET_CURVES_SOURCE } from './tables/gasket-curves.ts';
export { SIMULATION_LIMITS, type SimulationLimit } from './texts.ts';
export { type ToolCap, type ToolCapRequest, toolCap } from './tool-cap.ts';
export {
  type PlanTorquesRequest,
  planTorques,
  type TorquePass,
  type TorquePlan,
  type TorquePlanRequest,
  torquePlan,
} from './torque-plan.ts';
export { type WindowCap, windowCap } from './window-cap.ts';
