import { CalcRefusal, type TargetAnswer } from '@seatwell/calc';
import type { ProcedureContent } from '@seatwell/contract';
import type { JointState, MakeState, TargetElongation } from '@seatwell/workflow';
import { knownThicknesses } from './target-joint.ts';

const refuse = (path: string, code: string, message: string): never => {
  throw new CalcRefusal([{ path, code, message }]);
};

/**
 * The clamped parts of a make whose bolts are stretched to a length.
 * @throws CalcRefusal `bolt-modulus-missing`, `clamped-thickness-missing`: without them no elongation is known
 */
export function stretchedParts(
  joint: JointState,
  make: MakeState,
  { bolts }: ProcedureContent,
): readonly { readonly kind: string; readonly thickness_mm: number }[] {
  if (!bolts?.material)
    refuse(
      'procedure.bolts.material',
      'bolt-modulus-missing',
      'an elongation needs the elastic modulus of the bolts. Approve a revision of the procedure that gives it with its source.',
    );
  return (
    knownThicknesses(joint, make) ??
    refuse(
      'specification.clampedParts',
      'clamped-thickness-missing',
      'an elongation needs the thickness of every clamped part, for the length between the nuts. Enter them in the register.',
    )
  );
}

/** What a target keeps of its elongation; nothing where the bolts are tightened by another method. */
export function elongationOf(
  { bolts }: ProcedureContent,
  { tool }: Pick<TargetAnswer, 'tool'>,
): { readonly elongation?: TargetElongation } {
  const { elongation_mm, effectiveLength_mm } = tool;
  const elasticModulus_MPa = bolts?.material?.elasticModulus_MPa;
  if (elongation_mm === undefined || effectiveLength_mm === undefined || elasticModulus_MPa === undefined) return {};
  return { elongation: { elongation_mm, effectiveLength_mm, elasticModulus_MPa } };
}
