import type { Payload } from '@seatwell/contract';
import type { RuleContext } from '../context.ts';
import { gasketOf } from '../derived/makes.ts';
import { nominalSize_mm } from '../derived/nominal-size.ts';
import { hoursBetween } from '../time.ts';
import { notQualified } from './people.ts';
import { list, type Rule, rule } from './rule.ts';

const nipped = { events: ['nipped-up'] as const };
const refit = { remedy: 'Fit the gasket of this make.', clearedBy: ['chargehand'], floor: true } as const;

interface Limit {
  readonly what: string;
  readonly value: number | null;
  readonly limit: number;
  readonly unit: string;
}

// API 686, for machine nozzles (from memory): holes 1.5 mm, faces 0.01 mm to the cm of outside diameter. The
// outside of the gasket, or the nominal size, stands for that of the flange, which is larger: the limit is on the
// safe side.
const NOZZLE_OFFSET_MM = 1.5;
const NOZZLE_PARALLELISM_PER_MM = 0.001;

/** The alignment readings of a nip-up with their limits; a machine nozzle has its own, tighter ones. */
export function alignmentLimits(
  { alignment }: Payload<'nipped-up'>,
  { joint, make, settings }: Pick<RuleContext, 'joint' | 'make' | 'settings'>,
): readonly Limit[] {
  const site = settings.alignment;
  const nozzle = joint.kind === 'machine-nozzle';
  const outside = gasketOf(joint, make).contactOutside_mm ?? nominalSize_mm(joint.specification.flange.size);
  const parallelism = nozzle
    ? Math.min(site.parallelism_mm, (outside ?? 0) * NOZZLE_PARALLELISM_PER_MM)
    : site.parallelism_mm;
  const offset = nozzle ? Math.min(site.offset_mm, NOZZLE_OFFSET_MM) : site.offset_mm;
  return [
    { what: 'parallelism', value: alignment.parallelism_mm, limit: parallelism, unit: 'mm' },
    { what: 'offset', value: alignment.offset_mm, limit: offset, unit: 'mm' },
    { what: 'rotation', value: alignment.rotation_mm, limit: site.rotation_mm, unit: 'mm' },
    { what: 'force to pull it in', value: alignment.pullIn_percent, limit: site.pullIn_percent, unit: '%' },
  ];
}

const said = (off: readonly Limit[], factor: number) => ({
  detail: `${list(off.map((l) => `${l.what} ${l.value === null ? 'not measured' : `${l.value} ${l.unit}`}`))}.`,
  limit: list(off.map((l) => `${l.what} ${Number((l.limit * factor).toPrecision(4))} ${l.unit}`)),
});

export const nippedUpRules: readonly Rule[] = [
  rule({
    ...nipped,
    code: 'nipped-up.faces-not-lapsed',
    sentence: 'The acceptance of the faces has not lapsed.',
    why: 'Faces left open rust and are knocked.',
    remedy: 'Inspect the faces again.',
    clearedBy: ['chargehand', 'inspector'],
    test: (_payload, { make, workTime, settings }) => {
      if (make.facesAcceptedAt === null) return null; // the order rule says so
      const hours = hoursBetween(make.facesAcceptedAt, workTime);
      return hours > settings.faceAcceptanceLapses_h
        ? {
            detail: `The faces were accepted ${Math.floor(hours)} h ago.`,
            limit: `${settings.faceAcceptanceLapses_h} h`,
          }
        : null;
    },
  }),
  rule({
    ...nipped,
    ...refit,
    code: 'nipped-up.gasket-family',
    sentence: 'The gasket is of the family and type of this make.',
    why: 'Another gasket needs another load, and may not stand the service.',
    test: ({ gasket }, { joint, make }) => {
      const wanted = gasketOf(joint, make);
      const told = `${gasket.family}${gasket.detail ? ` (${gasket.detail})` : ''}`;
      const limit = `${wanted.family}${wanted.detail ? ` (${wanted.detail})` : ''}`;
      if (gasket.family !== wanted.family) return { detail: `The gasket is ${told}.`, limit };
      return wanted.detail && gasket.detail && gasket.detail !== wanted.detail
        ? { detail: `The gasket is ${told}.`, limit }
        : null;
    },
  }),
  rule({
    ...nipped,
    ...refit,
    code: 'nipped-up.gasket-size',
    sentence: 'The gasket is of the size and class of the flange.',
    why: 'A gasket of the next class fits between the bolts and seats on the wrong width.',
    test: ({ gasket }, { joint }) => {
      const { size, rating } = joint.specification.flange;
      const limit = `${size} ${rating}`.trim();
      if (gasket.family === 'none') return null;
      if (size && gasket.size !== size)
        return { detail: `The size on the gasket is ${gasket.size ?? 'not read'}.`, limit };
      return rating && gasket.rating && gasket.rating !== rating
        ? { detail: `The class on the gasket is ${gasket.rating}.`, limit }
        : null;
    },
  }),
  rule({
    ...nipped,
    ...refit,
    code: 'nipped-up.gasket-purpose',
    sentence: 'The gasket has the purpose of this make: final, spade-in, test or temporary.',
    why: 'A test gasket left in service is a leak that waits.',
    test: ({ gasket }, { make }) =>
      gasket.purpose === make.purpose
        ? null
        : { detail: `The gasket is a ${gasket.purpose} gasket.`, limit: make.purpose },
  }),
  rule({
    ...nipped,
    ...refit,
    code: 'nipped-up.gasket-count',
    sentence: 'Every gasket of the stack is in.',
    why: 'An insert joint has two gaskets under one set of studs.',
    test: ({ gasket }, { joint, make }) => {
      const { count } = gasketOf(joint, make);
      return gasket.count === count ? null : { detail: `${gasket.count} gaskets are in.`, limit: count };
    },
  }),
  rule({
    ...nipped,
    code: 'nipped-up.gasket-identified',
    sentence: 'The marking of the gasket is photographed, or its batch or kit is scanned.',
    why: 'Once it is in, nobody can see what it is.',
    remedy: 'Photograph the marking or scan the batch; else the inspector accepts with a reason.',
    clearedBy: ['inspector', 'engineer'],
    severity: 'reason',
    test: ({ gasket }) =>
      gasket.family === 'none' || gasket.batch || gasket.markingPhoto
        ? null
        : { detail: 'There is neither a photo of the marking nor a batch.' },
  }),
  rule({
    ...nipped,
    code: 'nipped-up.bolting-as-target',
    sentence: 'The bolting is what the target assumes and the inspection accepted.',
    why: 'Another grade, or a reused bolt, carries another load at the same torque.',
    remedy: 'Fit the bolting of the target, or have a target approved for this one.',
    clearedBy: ['engineer'],
    test: ({ bolting }, { joint, make }) => {
      const { target } = make;
      if (!target) return { detail: 'The make has no approved target to compare with.' };
      const off: string[] = [];
      if (joint.bolting && bolting.count !== joint.bolting.count)
        off.push(`${bolting.count} bolts instead of ${joint.bolting.count}`);
      if (target.boltGrade && bolting.grade !== target.boltGrade)
        off.push(`grade ${bolting.grade} instead of ${target.boltGrade}`);
      if (target.boltCondition !== 'either' && bolting.condition !== target.boltCondition)
        off.push(`${bolting.condition} bolting instead of ${target.boltCondition}`);
      if (make.boltingCondition && bolting.condition !== make.boltingCondition)
        off.push(`${bolting.condition} bolting where ${make.boltingCondition} was inspected`);
      return off.length === 0 ? null : { detail: `${list(off)}.` };
    },
  }),
  rule({
    ...nipped,
    code: 'nipped-up.lubricant-as-target',
    sentence: 'The lubricant is the one that the target assumes.',
    why: 'The torque of one lubricant overloads or underloads with another.',
    remedy: 'Use the lubricant of the target, or have a target approved for this one.',
    clearedBy: ['engineer'],
    test: ({ lubricantId, lubricant }, { make: { target } }) => {
      if (!target) return { detail: 'The make has no approved target to compare with.' };
      const same = target.lubricantId ? lubricantId === target.lubricantId : lubricant === target.lubricant;
      return same ? null : { detail: `The lubricant is ${lubricant}.`, limit: target.lubricant };
    },
  }),
  rule({
    ...nipped,
    code: 'nipped-up.alignment',
    sentence: 'Alignment and the force needed to pull it in are within limits.',
    why: 'Bolts that pull pipes together do not load the gasket.',
    remedy: 'Align the flanges; else QC accepts within its band, with a reason.',
    clearedBy: ['inspector', 'engineer'],
    severity: 'reason',
    test: (payload, context) => {
      const off = alignmentLimits(payload, context).filter((l) => l.value !== null && l.value > l.limit);
      return off.length === 0 ? null : said(off, 1);
    },
  }),
  rule({
    ...nipped,
    code: 'nipped-up.alignment-beyond-band',
    sentence: 'Alignment is measured and within the band that QC may accept.',
    why: 'Beyond the band the load taken from the bolts has to be reckoned with.',
    remedy: 'Measure and align the flanges; else the engineer accepts with a reason.',
    clearedBy: ['engineer'],
    severity: 'reason',
    test: (payload, context) => {
      const factor = context.settings.alignment.qcBand_factor;
      const off = alignmentLimits(payload, context).filter((l) => l.value === null || l.value > l.limit * factor);
      return off.length === 0 ? null : said(off, factor);
    },
  }),
  rule({
    ...nipped,
    code: 'nipped-up.qualified',
    sentence: 'Those who nip up are qualified for assembly through the shift.',
    why: 'Most leaks are made at assembly.',
    remedy: 'Put qualified people on it, or record the qualification.',
    clearedBy: ['inspector', 'administrator'],
    test: (_payload, context) => notQualified(context, 'assembly'),
  }),
];
