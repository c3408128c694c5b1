import type { Payload } from '@seatwell/contract';
import type { RuleContext } from '../context.ts';
import { relaxationDue, unclearedTools } from '../derived/flags.ts';
import { demandedLevel } from '../derived/makes.ts';
import { READINESS } from './readiness.ts';
import { type Finding, list, type Rule, rule } from './rule.ts';

const proven = { events: ['proven'] as const };

/** An exempt closure is not put under pressure: its proof is the witnessed closing. */
const underTest = (payload: Payload<'proven'>): boolean => payload.way !== 'exempt-closure';

const NO_PACK: Finding = { detail: 'The joint is in no test pack that could be looked at.' };

const atProof: readonly Rule[] = READINESS.map(({ what, test, ...words }) =>
  rule({
    ...proven,
    ...words,
    code: `proven.${what}`,
    floor: true,
    // Not released: `proven.pack-released` says so.
    test: (payload, context) =>
      underTest(payload) && context.pack?.released ? test(context.pack.released, context) : null,
  }),
);

const readingsThatHold = ({ pack }: RuleContext) =>
  pack?.readings.filter((r) => r.pressure_MPa >= pack.pressure_MPa && r.held_min >= pack.hold_min) ?? [];

const ownProofRules: readonly Rule[] = [
  rule({
    ...proven,
    code: 'proven.pack-released',
    sentence: 'The test pack of the joint is released.',
    why: 'Nobody puts pressure on what was not walked and released.',
    remedy: 'Release the pack.',
    clearedBy: ['inspector'],
    floor: true,
    test: (payload, { pack }) => {
      if (!underTest(payload)) return null;
      if (!pack) return NO_PACK;
      return pack.released ? null : { detail: `Pack ${pack.number} is not released.` };
    },
  }),
  rule({
    ...proven,
    code: 'proven.way',
    sentence: 'The joint is proven in the way that is planned for it.',
    why: 'A sniff test does not show what a pressure test shows.',
    remedy: 'Prove it in the way planned, or plan another.',
    clearedBy: ['engineer', 'inspector'],
    test: (payload, { make, pack }) => {
      if (payload.way !== make.proof) return { detail: `Proven by ${payload.way}.`, limit: make.proof };
      return underTest(payload) && pack && pack.way !== payload.way
        ? { detail: `Pack ${pack.number} is a ${pack.way}.`, limit: payload.way }
        : null;
    },
  }),
  rule({
    ...proven,
    code: 'proven.no-A-items',
    sentence: 'No category A item is open on the joint or its pack.',
    why: 'Category A is what must be done before the test.',
    remedy: 'Close the A items.',
    clearedBy: ['inspector'],
    floor: true,
    test: (_payload, { pack, unclosedPunchA }) => {
      const items = pack?.unclosedA ?? [];
      if (items.length > 0) return { detail: `${items.length} open: ${list(items)}.`, limit: 0 };
      return unclosedPunchA > 0 ? { detail: `${unclosedPunchA} A items are open on the joint.`, limit: 0 } : null;
    },
  }),
  rule({
    ...proven,
    code: 'proven.no-relaxation-due',
    sentence: 'No relaxation pass is due on the joint or in its pack.',
    why: 'After the test the joint is full, and nobody retightens it.',
    remedy: 'Make the relaxation passes.',
    clearedBy: ['chargehand'],
    floor: true,
    test: (_payload, { pack, joint, make, settings }) => {
      const own = relaxationDue(joint, make, settings) ? [joint.tag] : [];
      const due = [...new Set([...own, ...(pack?.relaxationDue ?? [])])];
      return due.length === 0 ? null : { detail: `Due on ${list(due)}.`, limit: 0 };
    },
  }),
  rule({
    ...proven,
    code: 'proven.no-provisional-tool',
    sentence: 'Every provisional tool that tightened the joint or its pack is cleared.',
    why: 'Until its certificate is confirmed, nobody knows what it tightened to.',
    remedy: 'Confirm the calibration, or retighten with another tool.',
    clearedBy: ['inspector'],
    floor: true,
    test: (_payload, { pack, joint, make, tools }) => {
      const own = unclearedTools(make, tools).length > 0 ? [joint.tag] : [];
      const off = [...new Set([...own, ...(pack?.provisionalTools ?? [])])];
      return off.length === 0 ? null : { detail: `Not cleared on ${list(off)}.`, limit: 0 };
    },
  }),
  rule({
    ...proven,
    code: 'proven.pressure-held',
    sentence: 'Pressure and hold of the test were reached.',
    why: 'A test that was not held proves nothing.',
    remedy: 'Hold the pressure and record the reading.',
    clearedBy: ['inspector'],
    test: (payload, context) => {
      const { pack } = context;
      if (!underTest(payload) || !pack || readingsThatHold(context).length > 0) return null;
      const best = [...pack.readings].sort((a, b) => b.pressure_MPa - a.pressure_MPa)[0];
      const limit = `${pack.pressure_MPa} MPa for ${pack.hold_min} min`;
      return best
        ? { detail: `The best reading is ${best.pressure_MPa} MPa for ${best.held_min} min.`, limit }
        : { detail: 'There is no reading.', limit };
    },
  }),
  rule({
    ...proven,
    code: 'proven.joint-result',
    sentence: 'The test has a result for this joint, and it does not leak.',
    why: 'A joint that nobody looked at is not proven by its neighbours.',
    remedy: 'Look at the joint under pressure and record its result.',
    clearedBy: ['inspector'],
    test: (payload, context) => {
      if (!underTest(payload) || !context.pack) return null;
      const results = readingsThatHold(context)
        .flatMap((reading) => reading.results)
        .filter(({ makeId }) => makeId === context.make.makeId);
      const last = results.at(-1);
      if (!last) return { detail: 'No reading at test pressure has a result for this joint.' };
      return last.result === 'leak' ? { detail: 'The last result of this joint is a leak.' } : null;
    },
  }),
  rule({
    ...proven,
    code: 'proven.lot-sampled',
    sentence: 'QC has checked at least one make of a lot that is sampled.',
    why: 'The draw goes joint by joint: of a small lot it may have drawn none.',
    remedy: 'QC chooses one make of the lot and checks it.',
    clearedBy: ['inspector'],
    severity: 'flag',
    test: (_payload, { joint, make, settings, lotSampled }) =>
      lotSampled === false && demandedLevel(joint, make, settings) === 'sample'
        ? { detail: `No make of the lot ${make.lotKey ?? ''} was checked by QC.`, limit: 'at least one' }
        : null,
  }),
  rule({
    ...proven,
    code: 'proven.closure-witnessed',
    sentence: 'The closing of an exempt joint was witnessed.',
    why: 'What is not tested is at least seen.',
    remedy: 'The witness signs the tightening, or the joint is tested.',
    clearedBy: ['witness'],
    test: (payload, { make }) =>
      underTest(payload) || make.witnessed.includes('tightening')
        ? null
        : { detail: 'The tightening of this exempt closure was not witnessed.' },
  }),
];

export const provenRules: readonly Rule[] = [...ownProofRules, ...atProof];
