import * as id from '../ids.ts';
import { PAYLOADS } from '../payloads.ts';
import { listing, plan, targetEvidence } from '../register.ts';
import { Story } from '../story.ts';
import { surroundings } from '../world.ts';
import { at, type RuleCase } from './rule-case.ts';
import { spadedTo, unqualified, withPermit, withProcedure, withScope } from './situations.ts';

/** Engineering, release and opening. */
export const ENGINEERED_TO_OPEN_CASES: Readonly<Record<string, RuleCase>> = {
  'engineered.procedure-approved': at('listed', 'procedure-assigned', {
    around: { procedure: { ...surroundings.procedure!, approved: false } },
  }),
  'engineered.kind': at('listed', 'procedure-assigned', { around: withScope({ kinds: ['clamp-connector'] }) }),
  'engineered.bolt-count': at('listed', 'procedure-assigned', { around: withScope({ leastBolts: 12 }) }),
  'engineered.rating': at('listed', 'procedure-assigned', { around: withScope({ ratings: ['600'] }) }),
  'engineered.gasket-family': at('listed', 'procedure-assigned', {
    around: withScope({ gasketFamilies: ['ring-joint'] }),
  }),
  'engineered.tools': at('listed', 'procedure-assigned', { around: withProcedure({ tools: 3 }) }),
  'engineered.work-scope': at(
    'listed',
    'procedure-assigned',
    { around: withScope({ workScopes: undefined }) },
    { story: () => new Story({ ...listing, makes: [{ ...plan, workScope: 'hot-bolting' }] }) },
  ),
  'engineered.target-for-stack': at('procedure assigned', 'target-approved', {
    around: { newTarget: { ...targetEvidence, gasketFamily: 'ptfe-sheet' } },
  }),
  'engineered.target-window': at('procedure assigned', 'target-approved', {
    around: { newTarget: { ...targetEvidence, insideWindow: false } },
  }),

  'released.permit': at('engineered', 'break-released', { around: withPermit({ jointIds: [id.uuid(77)] }) }),
  'released.signature': at('engineered', 'break-released', { around: { signed: false } }),

  'open.zero-energy-checks': at('released', 'opened', {
    change: { zeroEnergyChecks: PAYLOADS.opened.zeroEnergyChecks.slice(0, 1) },
  }),
  'open.zero-energy-by-two': at('released', 'opened', {
    change: { zeroEnergyChecks: PAYLOADS.opened.zeroEnergyChecks.map((check) => ({ ...check, personId: id.ANA })) },
  }),
  'open.first-break-caution': at('released', 'opened', { change: { cautionShown: false } }),
  'open.qualified': at('released', 'opened', { around: unqualified(id.BEN) }),
  'open.planned-crew': at('released', 'opened', { around: { performedBy: [id.INES] } }),
  'open.permit-in-force': at('released', 'opened', { around: withPermit({ withdrawn: true }) }),
  'open.earlier-make-closed': at(
    'released',
    'opened',
    { story: () => spadedTo('open') },
    { story: () => spadedTo('tight'), choices: { makeId: id.NEXT_MAKE } },
  ),
};
