import type { Payload } from '@seatwell/contract';
import type { RuleContext } from '../context.ts';
import { facesOf } from '../derived/makes.ts';
import { notQualified } from './people.ts';
import { list, type Rule, rule } from './rule.ts';

type Inspection = Payload<'faces-inspected'>;

const accepting = { events: ['faces-inspected'] as const };

/** Nominal size in mm of "NPS8" or "DN200", 25 mm to the inch (exact from NPS 4 up); null when it cannot be read. */
function nominalSize_mm(size: string): number | null {
  const [, system, digits] = /^(NPS|DN)\s*(\d+(?:\.\d+)?)$/.exec(size) ?? [];
  if (!system || !digits) return null;
  return Number(digits) * (system === 'DN' ? 1 : 25);
}

/** Why faces of this joint are measured and not only looked at; empty when looking is enough. */
export function whyMeasured({ joint, settings }: Pick<RuleContext, 'joint' | 'settings'>): readonly string[] {
  const size = nominalSize_mm(joint.specification.flange.size);
  return [
    ...(joint.kind === 'girth' ? ['a girth joint'] : []),
    ...(size === null ? ['its size is not known'] : []),
    ...(size !== null && size >= settings.largeFlangeFrom_mm ? [`a large flange (DN ${size})`] : []),
    ...(joint.makes.some((make) => make.hasLeaked) ? ['it has leaked'] : []),
    ...(settings.criticalities[joint.criticality].measuredFlatness ? [`criticality ${joint.criticality}`] : []),
  ];
}

/** Rules of acceptance: a rejection is always recorded. */
const whenAccepted =
  (test: (payload: Inspection, context: RuleContext) => ReturnType<Rule['test']>) =>
  (payload: Inspection, context: RuleContext) =>
    payload.accepted ? test(payload, context) : null;

export const facesRules: readonly Rule[] = [
  rule({
    ...accepting,
    code: 'faces.every-face',
    sentence: 'The condition of every face in the stack is recorded and accepted.',
    why: 'An insert joint has four faces; the one not looked at is the one that leaks.',
    remedy: 'Inspect and accept each face, or reject the inspection.',
    clearedBy: ['chargehand', 'inspector'],
    test: whenAccepted(({ faces }, { joint, make }) => {
      const count = facesOf(joint, make);
      const wanted = Array.from({ length: count }, (_, index) => index + 1);
      const missing = wanted.filter((n) => !faces.some((face) => face.face === n && face.accepted));
      return missing.length === 0
        ? null
        : { detail: `Face ${list(missing.map(String))} is not recorded as accepted.`, limit: `${count} faces` };
    }),
  }),
  rule({
    ...accepting,
    code: 'faces.measured',
    sentence: 'Flatness and imperfections are measured where size, kind, criticality or a leak demand it.',
    why: 'What the eye accepts can be out of flat by more than the gasket takes up.',
    remedy: 'Measure flatness and the depth and extent of imperfections of each face.',
    clearedBy: ['inspector'],
    test: whenAccepted(({ faces }, context) => {
      const reasons = whyMeasured(context);
      if (reasons.length === 0) return null;
      const missing = faces.filter(
        (face) =>
          face.flatness_mm === null ||
          (face.condition !== 'clean' && (face.imperfectionDepth_mm === null || face.imperfectionExtent_mm === null)),
      );
      return missing.length === 0
        ? null
        : { detail: `Face ${list(missing.map((f) => String(f.face)))} is not measured: ${list(reasons)}.` };
    }),
  }),
  rule({
    ...accepting,
    code: 'faces.ring-groove',
    sentence: 'Ring grooves are examined by touch and light.',
    why: 'A scratch across the groove is felt before it is seen.',
    remedy: 'Go round each groove by touch and with a light.',
    clearedBy: ['chargehand', 'inspector'],
    test: whenAccepted(({ faces }, { joint }) => {
      if (joint.kind !== 'ring-joint' && joint.specification.flange.facing !== 'ring-joint') return null;
      const missing = faces.filter((face) => face.ringGrooveTouched !== true);
      return missing.length === 0
        ? null
        : { detail: `Groove ${list(missing.map((f) => String(f.face)))} was not examined by touch.` };
    }),
  }),
  rule({
    ...accepting,
    code: 'faces.bolting',
    sentence: 'The bolting is inspected, new or reused, and accepted.',
    why: 'A damaged thread takes the torque and gives no load.',
    remedy: 'Replace or accept the bolting.',
    clearedBy: ['chargehand', 'inspector'],
    test: whenAccepted(({ bolting }) =>
      bolting.accepted ? null : { detail: `The ${bolting.condition} bolting is not accepted.` },
    ),
  }),
  rule({
    ...accepting,
    code: 'faces.qualified',
    sentence: 'Those who inspect the faces are qualified for it through the shift.',
    why: 'The limits depend on the gasket and on where the mark is.',
    remedy: 'Have a qualified person inspect, or record the qualification.',
    clearedBy: ['inspector', 'administrator'],
    test: (_payload, context) => notQualified(context, 'face-inspection'),
  }),
];
