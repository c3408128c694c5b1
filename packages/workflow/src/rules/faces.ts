import type { Payload } from '@seatwell/contract';
import type { RuleContext } from '../context.ts';
import { facesOf, gasketOf } from '../derived/makes.ts';
import { nominalSize_mm } from '../derived/nominal-size.ts';
import { FACE_LIMITS_SOURCE, flatnessLimit_mm, imperfectionLimit_mm, imperfectionOf } from './face-limits.ts';
import { notQualified } from './people.ts';
import { list, type Rule, rule } from './rule.ts';

type Inspection = Payload<'faces-inspected'>;

const accepting = { events: ['faces-inspected'] as const };

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
    code: 'faces.flatness',
    sentence: 'The flatness that was measured is within the limit for the gasket.',
    why: 'Where the face falls away the gasket is loaded less, and leaks first.',
    remedy: 'Machine or replace the flange; else the inspector or the engineer accepts with a reason.',
    clearedBy: ['inspector', 'engineer'],
    severity: 'reason',
    test: whenAccepted(({ faces }, { joint, make }) => {
      const limit = flatnessLimit_mm(gasketOf(joint, make).family);
      const off = faces.filter(({ flatness_mm }) => flatness_mm !== null && flatness_mm > limit);
      return off.length === 0
        ? null
        : {
            detail: `${list(off.map((face) => `Face ${face.face}: ${face.flatness_mm} mm`))} out of flat.`,
            limit: `${limit} mm (${FACE_LIMITS_SOURCE})`,
          };
    }),
  }),
  rule({
    ...accepting,
    code: 'faces.imperfections',
    sentence: 'Imperfections are no deeper than their reach across the seating width allows.',
    why: 'A mark that crosses the seating width is a way out for the medium.',
    remedy: 'Dress, machine or replace the flange; else the inspector or the engineer accepts with a reason.',
    clearedBy: ['inspector', 'engineer'],
    severity: 'reason',
    test: whenAccepted(({ faces }, { joint, make, seatingWidth_mm: width }) => {
      const { family } = gasketOf(joint, make);
      const marked = faces.flatMap((face) => {
        const mark = imperfectionOf(face);
        return mark ? [{ face: face.face, ...mark }] : [];
      });
      if (marked.length === 0) return null;
      if (width === null)
        return {
          detail: `Face ${list(marked.map(({ face }) => String(face)))} has imperfections, and neither the register nor a table says what width the gasket covers.`,
          limit: 'contact diameters of the gasket',
        };
      const limitOf = (reach: number) => imperfectionLimit_mm(family, width, reach);
      const off = marked.filter(({ depth_mm, reach_mm }) => depth_mm > limitOf(reach_mm));
      return off.length === 0
        ? null
        : {
            detail: `${list(off.map(({ face, depth_mm, reach_mm }) => `Face ${face}: ${depth_mm} mm deep over ${reach_mm} mm`))}.`,
            limit: `${list(off.map(({ reach_mm }) => `${limitOf(reach_mm)} mm`))} over ${Number(width.toPrecision(4))} mm (${FACE_LIMITS_SOURCE})`,
          };
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
