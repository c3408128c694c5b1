import { READINESS } from './readiness.ts';
import { type Finding, list, type PackRule, packRule } from './rule.ts';
import { notCalibrated } from './tools.ts';

const released = { events: ['pack-released'] as const };

const NO_PACK: Finding = { detail: 'There is no such test pack to look at.' };

const atRelease: readonly PackRule[] = READINESS.map(({ what, test, ...words }) =>
  packRule({ ...released, ...words, code: `pack.${what}`, floor: true, test }),
);

const read = { events: ['test-reading'] as const };

const atReading: readonly PackRule[] = [
  packRule({
    ...read,
    code: 'pack.read-once-released',
    sentence: 'Pressure is read on a pack that is released.',
    why: 'Pressure on what was not walked and released is the danger, not the reading.',
    remedy: 'Take the pressure off, and release the pack before it is put on again.',
    clearedBy: ['inspector'],
    floor: true,
    test: (_payload, { pack }) => {
      if (!pack) return NO_PACK;
      return pack.released ? null : { detail: `Pack ${pack.number} is not released.` };
    },
  }),
  packRule({
    ...read,
    code: 'pack.read-by-calibrated-gauge',
    sentence: 'Pressure is read on a gauge in calibration.',
    why: 'The gauge is the only witness of the pressure.',
    remedy: 'Read it on a calibrated gauge and name that.',
    clearedBy: ['inspector'],
    test: ({ gaugeIds }, context) => {
      if (gaugeIds.length === 0) return { detail: 'No gauge is named.', limit: 'at least one' };
      const off = gaugeIds.flatMap((id) => notCalibrated(context.tools[id], context) ?? []);
      return off.length === 0 ? null : { detail: `Not in calibration: ${list(off)}.` };
    },
  }),
];

export const packRules: readonly PackRule[] = [
  ...atRelease,
  ...atReading,
  packRule({
    ...released,
    code: 'pack.no-A-items',
    sentence: 'No category A item is open in the pack.',
    why: 'Category A is what must be done before the test.',
    remedy: 'Close the A items.',
    clearedBy: ['inspector'],
    floor: true,
    test: (_payload, { pack }) => {
      if (!pack) return NO_PACK;
      return pack.unclosedA.length > 0 ? { detail: `Open: ${list(pack.unclosedA)}.`, limit: 0 } : null;
    },
  }),
  packRule({
    ...released,
    code: 'pack.no-relaxation-due',
    sentence: 'No relaxation pass is due in the pack.',
    why: 'After the test the joint is full, and nobody retightens it.',
    remedy: 'Make the relaxation passes.',
    clearedBy: ['inspector'],
    floor: true,
    test: (_payload, { pack }) =>
      pack && pack.relaxationDue.length > 0 ? { detail: `Due on ${list(pack.relaxationDue)}.`, limit: 0 } : null,
  }),
  packRule({
    ...released,
    code: 'pack.no-provisional-tool',
    sentence: 'Every provisional tool that tightened in the pack is cleared.',
    why: 'Until its certificate is confirmed, nobody knows what it tightened to.',
    remedy: 'Confirm the calibration, or retighten with another tool.',
    clearedBy: ['inspector'],
    floor: true,
    test: (_payload, { pack }) =>
      pack && pack.provisionalTools.length > 0
        ? { detail: `Not cleared on ${list(pack.provisionalTools)}.`, limit: 0 }
        : null,
  }),
];
