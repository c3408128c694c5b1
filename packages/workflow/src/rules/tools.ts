import type { Payload } from '@seatwell/contract';
import type { RuleContext, ToolFacts } from '../context.ts';
import { hoursBetween } from '../time.ts';
import { type Finding, list, type Rule, rule } from './rule.ts';

export const TIGHTENING = ['pass-recorded', 'final-round-recorded', 'relaxation-pass-recorded'] as const;
type Tightening = Payload<(typeof TIGHTENING)[number]>;

/** Mechanical wrenches are used between these shares of their scale (common practice). */
const LEAST_SHARE_OF_SCALE = 0.2;

const HYDRAULIC: readonly string[] = ['hydraulic-wrench', 'tensioner'];

export const toolIdsOf = ({ tools }: Tightening): readonly string[] =>
  [tools.toolId, tools.pumpId, tools.gaugeId].filter((id) => id !== null);

const calibratedAfter = ({ calibrations }: ToolFacts, failedOn: string, workDay: string): boolean =>
  calibrations.some(
    ({ calibratedOn, provisional, clearedAt }) =>
      calibratedOn > failedOn && calibratedOn <= workDay && (!provisional || clearedAt !== null),
  );

/** Why a tool may not be used at this moment; null when it may. */
export function notCalibrated(
  tool: ToolFacts | undefined,
  context: Pick<RuleContext, 'workDay' | 'shiftEndDay' | 'workTime' | 'settings'>,
): string | null {
  if (!tool) return 'a tool that is not on record';
  // Found wrong, it is out of use until it was calibrated anew.
  const { failedOn } = tool;
  if (failedOn && failedOn <= context.workDay && !calibratedAfter(tool, failedOn, context.workDay))
    return `${tool.tag} (failed on ${failedOn})`;
  const inForce = tool.calibrations.filter(
    (c) => c.calibratedOn <= context.workDay && c.validThrough >= context.shiftEndDay,
  );
  const confirmed = inForce.some((c) => !c.provisional || c.clearedAt !== null);
  if (confirmed) return null;
  const provisional = inForce.filter((c) => c.provisional);
  if (provisional.length === 0) return `${tool.tag} (no calibration through ${context.shiftEndDay})`;
  if (!provisional.some((c) => c.hasCertificate)) return `${tool.tag} (provisional without a certificate)`;
  const inTime = provisional.some(
    (c) =>
      c.hasCertificate && hoursBetween(c.recordedAt, context.workTime) <= context.settings.provisionalToolCleared_h,
  );
  return inTime ? null : `${tool.tag} (provisional for more than ${context.settings.provisionalToolCleared_h} h)`;
}

function outOfRange(value: number, unit: string, tool: ToolFacts): Finding | null {
  const shareOfScale = tool.kind === 'torque-wrench' ? tool.scaleMaximum * LEAST_SHARE_OF_SCALE : 0;
  const least = Math.max(tool.scaleMinimum ?? 0, shareOfScale);
  return value < least || value > tool.scaleMaximum
    ? {
        detail: `${tool.tag} was set to ${value} ${unit}.`,
        limit: `${Number(least.toPrecision(4))} to ${tool.scaleMaximum} ${unit}`,
      }
    : null;
}

const crewTool = { events: TIGHTENING, clearedBy: ['chargehand', 'inspector'] } as const;

export const toolRules: readonly Rule[] = [
  rule({
    ...crewTool,
    code: 'passes.tool-calibrated',
    sentence: 'Tool, gauge and pump are in calibration through the shift.',
    why: 'A tool that drifted tightens every bolt wrongly, and nobody sees it.',
    remedy: 'Take calibrated tools, or record the certificate (provisional: photo, cleared in time).',
    test: (payload, context) => {
      const off = toolIdsOf(payload).flatMap((id) => notCalibrated(context.tools[id], context) ?? []);
      return off.length === 0
        ? null
        : { detail: `Not in calibration: ${list(off)}.`, limit: `valid through ${context.shiftEndDay}` };
    },
  }),
  rule({
    ...crewTool,
    code: 'passes.tool-set-complete',
    sentence: 'A hydraulic tool is recorded with its pump and gauge.',
    why: 'What the gauge shows is what the bolt gets.',
    remedy: 'Name the pump and the gauge.',
    test: ({ tools }, context) => {
      const kind = context.tools[tools.toolId]?.kind ?? context.make.procedure?.method ?? '';
      if (!HYDRAULIC.includes(kind) || (tools.pumpId && tools.gaugeId)) return null;
      const missing = [...(tools.pumpId ? [] : ['pump']), ...(tools.gaugeId ? [] : ['gauge'])];
      return { detail: `No ${list(missing)} is named with the ${kind.replaceAll('-', ' ')}.` };
    },
  }),
  rule({
    ...crewTool,
    code: 'passes.tool-in-range',
    sentence: 'The set value is in the usable range of the tool (mechanical wrenches: 20 to 100 % of scale).',
    why: 'At the ends of its scale a tool does not hold its accuracy.',
    remedy: 'Take a tool whose range fits.',
    test: ({ set, tools }, context) => {
      const used = [tools.toolId, tools.gaugeId].flatMap((id) => (id && context.tools[id]) || []);
      const [value, unit] =
        set.torque_Nm !== undefined
          ? ([set.torque_Nm, 'N·m'] as const)
          : set.pressure_MPa !== undefined
            ? ([set.pressure_MPa, 'MPa'] as const)
            : ([set.elongation_mm ?? 0, 'mm'] as const);
      const comparable = used.filter((tool) => tool.scaleUnit === unit);
      if (comparable.length === 0)
        return { detail: `None of the tools has a scale in ${unit}, in which ${value} ${unit} was set.` };
      for (const tool of comparable) {
        const finding = outOfRange(value, unit, tool);
        if (finding) return finding;
      }
      return null;
    },
  }),
];
