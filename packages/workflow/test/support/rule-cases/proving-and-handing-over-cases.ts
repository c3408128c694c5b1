import * as id from '../ids.ts';
import { toldTo } from '../story.ts';
import { surroundings } from '../world.ts';
import { at, type RuleCase } from './rule-case.ts';
import { exemptClosure, ofCriticality, withPack, withRelease, withSystem } from './situations.ts';

/** Proof and hand-over. */
export const PROVING_AND_HANDING_OVER_CASES: Readonly<Record<string, RuleCase>> = {
  'proven.pack-released': at('checked', 'proven', { around: withPack({ released: null }) }),
  'proven.way': at('checked', 'proven', { change: { way: 'gas-or-sniff-test' } }),
  'proven.no-A-items': at('checked', 'proven', { around: { unclosedPunchA: 1 } }),
  'proven.no-relaxation-due': at('checked', 'proven', { around: withPack({ relaxationDue: ['J-1003'] }) }),
  'proven.no-provisional-tool': at('checked', 'proven', { around: withPack({ provisionalTools: ['J-1004'] }) }),
  'proven.pressure-held': at('checked', 'proven', {
    around: withPack({ readings: [{ ...surroundings.pack!.readings[0]!, held_min: 12 }] }),
  }),
  'proven.joint-result': at('checked', 'proven', {
    around: withPack({
      readings: [{ ...surroundings.pack!.readings[0]!, results: [{ makeId: id.MAKE, result: 'leak' }] }],
    }),
  }),
  'proven.closure-witnessed': at(
    'checked',
    'proven',
    { story: () => toldTo('checked', exemptClosure()) },
    {
      story: () => toldTo('checked', exemptClosure()).record('witnessed'),
      change: { way: 'exempt-closure', packId: null },
    },
  ),
  'proven.lot-sampled': at(
    'checked',
    'proven',
    { around: { lotSampled: false } },
    { story: () => toldTo('checked', ofCriticality('B')), around: { lotSampled: true } },
  ),
  'proven.boundary-walked': at('checked', 'proven', { around: withRelease({ boundaryWalked: false }) }),
  'proven.blinds-rated': at('checked', 'proven', { around: withRelease({ blindsRated: false }) }),
  'proven.relief-valves-out': at('checked', 'proven', { around: withRelease({ reliefValvesOut: false }) }),
  'proven.metal-temperature': at('checked', 'proven', { around: withRelease({ metalTemperature_C: 2 }) }),
  'proven.gauges-calibrated': at('checked', 'proven', { around: withRelease({ gaugeIds: [] }) }),

  'handed-over.joints-reconciled': at('proven', 'hand-over-offered', { around: withSystem({ notProven: ['J-1005'] }) }),
  'handed-over.own-system': at('proven', 'hand-over-offered', { change: { systemId: id.uuid(66) } }),
  'handed-over.no-temporary-blinds': at('proven', 'hand-over-offered', {
    around: withSystem({ temporaryBlindsIn: ['B-7'] }),
  }),
  'handed-over.no-temporary-fittings': at('proven', 'hand-over-offered', {
    around: withSystem({ temporaryFittings: ['J-1006'] }),
  }),
  'handed-over.no-A-items': at('proven', 'hand-over-offered', { around: withSystem({ unclosedA: ['Stud short'] }) }),
  'handed-over.exceptions-listed': at(
    'proven',
    'hand-over-offered',
    { change: { exceptions: [] } },
    { change: { exceptions: ['Paint'] }, around: withSystem({ unclosedB: ['Paint'] }) },
  ),
  'handed-over.offered': at('offered', 'handed-over', { story: () => toldTo('proven') }),
  'handed-over.two-persons': at('offered', 'handed-over', { around: { signerPersonId: id.CORA } }),
  'handed-over.signature': at('proven', 'hand-over-offered', { around: { actorRoles: ['engineer'] } }),
};
