import { CalcRefusal, type TargetRequest, targetTensioning } from '@seatwell/calc';
import type { Coverage, ProcedureContent, TensionerChoice } from '@seatwell/contract';
import type { JointState, MakeState, Tensioning, ToolFacts } from '@seatwell/workflow';
import { knownThicknesses } from './target-joint.ts';
import { isPlainPair, simulatedFlange } from './tightening-plan.ts';

/** The tensioner that a target is for: its plate, the gauge that is read, and how many bolts it takes at once. */
export interface Tensioner {
  readonly coverage: Coverage;
  readonly toolId: string;
  readonly tag: string;
  readonly hydraulicArea_mm2: number;
  readonly maximumPressure_MPa: number;
  readonly gaugeDivision_MPa: number;
}

const refuse = (path: string, code: string, message: string): never => {
  throw new CalcRefusal([{ path: `payload.${path}`, code, message }]);
};

/**
 * The tensioner of the engineer's choice; null where the procedure tightens by another method.
 * @throws CalcRefusal where the choice and the method do not go together, or the tool register does not say enough
 */
export function chosenTensioner(
  { method, coverage }: ProcedureContent,
  choice: TensionerChoice | null | undefined,
  tools: Readonly<Record<string, ToolFacts>>,
): Tensioner | null {
  if (method !== 'tensioner') {
    if (choice)
      refuse(
        'tensioner',
        'tensioner-of-other-method',
        `a tensioner was named and the procedure tightens by ${method.replaceAll('-', ' ')}. Assign a procedure for tensioners.`,
      );
    return null;
  }
  if (!coverage)
    return refuse(
      'tensioner',
      'coverage-missing',
      'the procedure does not say how many bolts are tensioned at once. Approve a revision that gives the coverage.',
    );
  if (!choice)
    return refuse(
      'tensioner',
      'tensioner-not-named',
      'the pressure depends on the tensioner. Set the target of this joint by calculation and name the tensioner.',
    );
  const tool = tools[choice.toolId];
  if (tool?.kind !== 'tensioner' || tool.scaleUnit !== 'MPa')
    return refuse(
      'tensioner.toolId',
      'not-a-tensioner',
      `${tool?.tag ?? choice.toolId} is no tensioner with a scale in MPa. Choose one from the tool register.`,
    );
  const { hydraulicArea_mm2 } = tool;
  if (hydraulicArea_mm2 === undefined || hydraulicArea_mm2 === null)
    return refuse(
      'tensioner.toolId',
      'hydraulic-area-missing',
      `the tool register gives no hydraulic area of ${tool.tag}. Register the tensioner with the area on its plate.`,
    );
  return {
    coverage,
    toolId: tool.toolId,
    tag: tool.tag,
    hydraulicArea_mm2,
    maximumPressure_MPa: tool.scaleMaximum,
    gaugeDivision_MPa: choice.gaugeDivision_MPa,
  };
}

/**
 * What the bolts clamp on this make, with every thickness: the load that a tensioner leaves behind depends on it.
 * @throws CalcRefusal `clamped-thickness-missing`
 */
export function clampedThicknesses(
  joint: JointState,
  make: MakeState,
): readonly { readonly kind: string; readonly thickness_mm: number }[] {
  return (
    knownThicknesses(joint, make) ??
    refuse(
      'tensioner',
      'clamped-thickness-missing',
      'a tensioner needs the thickness of every clamped part, for the length between the nuts. Enter them in the register.',
    )
  );
}

/** A joint that the simulation does not stand for has no pressures below full coverage; the calculation says so. */
const simulated = (joint: JointState, make: MakeState) =>
  joint.specification.flange.standard !== 'custom' && isPlainPair(joint, make)
    ? { joint: simulatedFlange(joint, make) }
    : {};

/**
 * The pressures of every group in every pass, as the target keeps them.
 * @throws CalcRefusal of `targetTensioning`: nothing that cannot be set or borne is kept
 */
export function tensioningOf(
  joint: JointState,
  make: MakeState,
  tensioner: Tensioner,
  request: TargetRequest,
  residualLoad_N: number,
): Tensioning {
  const { coverage, toolId, tag, hydraulicArea_mm2, maximumPressure_MPa, gaugeDivision_MPa } = tensioner;
  const { warnings, ...plan } = targetTensioning(request, residualLoad_N, {
    coverage,
    toolMaximumPressure_MPa: maximumPressure_MPa,
    gaugeDivision_MPa,
    ...simulated(joint, make),
  });
  return {
    toolId,
    toolTag: tag,
    hydraulicArea_mm2,
    gaugeDivision_MPa,
    coverage,
    residualLoad_N,
    ...plan,
    warnings: warnings.map(({ message }) => message),
  };
}
