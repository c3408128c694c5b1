import { CalcRefusal, type StandardJointRequest, type TargetAnswer, torquePlan } from '@seatwell/calc';
import type { ProcedureContent, TighteningChoice } from '@seatwell/contract';
import { gasketOf, type JointState, type MakeState, type TighteningPlan } from '@seatwell/workflow';
import { gasketContact } from './gasket-contact.ts';

const refuse = (code: string, message: string): never => {
  throw new CalcRefusal([{ path: 'payload.tightening', code, message }]);
};

/** A joint as the simulation takes it: a pair of weld-neck flanges, or one against a blind. */
export function simulatedFlange(joint: JointState, make: MakeState): StandardJointRequest {
  const { flange, clampedParts } = joint.specification;
  const parts = make.clampedParts ?? clampedParts;
  const blind = parts.some(({ kind }) => kind === 'blind-flange' || kind === 'cover');
  const { family } = gasketOf(joint, make);
  const contact = gasketContact(joint, make);
  return {
    standard: flange.standard,
    size: flange.size,
    rating: flange.rating,
    ...(joint.bolting ? { boltCount: joint.bolting.count } : {}),
    kind: blind ? 'weld-neck-to-blind' : 'weld-neck-pair',
    gasket: { family, ...contact },
  };
}

/** With more than two flanges or one gasket between them, the ring of a plain pair does not stand for the joint. */
export function isPlainPair(joint: JointState, make: MakeState): boolean {
  const parts = make.clampedParts ?? joint.specification.clampedParts;
  const between = parts.filter(({ kind }) => !['flange', 'gasket', 'blind-flange', 'cover'].includes(kind));
  return joint.kind === 'flange-pair' && between.length === 0 && gasketOf(joint, make).count <= 1;
}

function requirePlainPair(joint: JointState, make: MakeState): void {
  if (!isPlainPair(joint, make))
    refuse(
      'computed-loads-for-plain-pairs',
      'Computed loads rest on a plain flange pair with one gasket; this joint has more between its flanges or is of another kind. Keep the pattern of the procedure.',
    );
}

/**
 * The engineer's choice of how the joint is tightened, worked out: the server computes every set value itself.
 * @throws CalcRefusal where the choice does not fit the procedure, the joint or its state, or gains nothing
 */
export function tighteningPlan(
  joint: JointState,
  make: MakeState,
  procedure: ProcedureContent,
  answer: TargetAnswer,
  choice: TighteningChoice | null | undefined,
): TighteningPlan | null {
  if (!choice) return null;
  if (choice.way === 'pattern') {
    if (choice.pattern !== procedure.pattern)
      refuse(
        'pattern-of-other-procedure',
        `The pattern ${choice.pattern} was chosen and the procedure goes by ${procedure.pattern}. Assign a procedure with the pattern chosen.`,
      );
    return { way: 'pattern', pattern: choice.pattern };
  }
  if (make.passes.length > 0)
    refuse(
      'computed-loads-before-first-pass',
      `${make.passes.length} passes are recorded; computed loads begin on a loose joint. Keep the pattern of the procedure.`,
    );
  if (procedure.method === 'tensioner')
    refuse(
      'computed-loads-not-by-tensioner',
      'Computed loads are set values of a wrench; a tensioner goes by its groups. Keep the pattern of the procedure.',
    );
  if (procedure.method === 'elongation')
    refuse(
      'computed-loads-not-by-elongation',
      'Computed loads are set values of a wrench; here the stretch of each bolt is measured. Keep the pattern of the procedure.',
    );
  if (procedure.tools > 1)
    refuse(
      'computed-loads-one-tool',
      `The procedure tightens ${procedure.tools} bolts at once; computed loads are worked out for one tool.`,
    );
  requirePlainPair(joint, make);
  const plan = torquePlan({
    joint: simulatedFlange(joint, make),
    answer,
    toolDivision_Nm: choice.toolDivision_Nm,
    setValues: choice.setValues,
    usual: {
      pattern: procedure.pattern,
      passPercents: procedure.passPercents,
      ...(procedure.group !== null && procedure.group > 1 ? { group: procedure.group } : {}),
    },
  });
  const { final, band } = plan;
  if (!plan.worthwhile || !final || !band) return refuse(plan.statement.code, plan.statement.message);
  const { min, mean, max } = final;
  return {
    way: 'computed-loads',
    toolDivision_Nm: choice.toolDivision_Nm,
    cap_percent: plan.cap.percent,
    capGovernedBy: plan.cap.governedBy,
    passes: plan.passes,
    final: { min, mean, max },
    band,
    tilt_mm: plan.largestTilt_mm ?? 0,
    usualTilt_mm: plan.plan.conventional.largestParallelism_mm,
    moves: plan.moves,
    movesSaved: plan.movesSaved,
    passesSaved: plan.passesSaved,
  };
}
