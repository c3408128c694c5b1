import type { Payload } from '@seatwell/contract';
import type { PackContext } from '@seatwell/workflow';
import * as id from '../ids.ts';
import { PAYLOADS } from '../payloads.ts';
import { surroundings, timesAt } from '../world.ts';
import type { PackCase } from './rule-case.ts';
import { withPack } from './situations.ts';

const packAsked = (change: Partial<Payload<'pack-released'>>, around: Partial<PackContext> = {}) => ({
  question: { type: 'pack-released', payload: { ...PAYLOADS['pack-released'], ...change } },
  context: { ...surroundings, ...timesAt('2027-03-05T08:00:00.000Z'), ...around },
});

const packCase = (change: Partial<Payload<'pack-released'>>, around: Partial<PackContext> = {}): PackCase => ({
  fires: () => packAsked(change, around),
  satisfied: () => packAsked({}),
});

const readingAsked = (change: Partial<Payload<'test-reading'>>, around: Partial<PackContext> = {}) => ({
  question: { type: 'test-reading', payload: { ...PAYLOADS['test-reading'], ...change } },
  context: { ...surroundings, ...timesAt('2027-03-05T08:00:00.000Z'), ...around },
});

/** Each rule about a pack. */
export const PACK_CASES: Readonly<Record<string, PackCase>> = {
  'pack.boundary-walked': packCase({ boundaryWalked: false }),
  'pack.blinds-rated': packCase({ blindsRated: false }),
  'pack.relief-valves-out': packCase({ reliefValvesOut: false }),
  'pack.metal-temperature': packCase({ metalTemperature_C: 4 }),
  'pack.gauges-calibrated': packCase({ gaugeIds: [id.uuid(55)] }),
  'pack.no-A-items': packCase({}, withPack({ unclosedA: ['Support missing'] }) as Partial<PackContext>),
  'pack.no-relaxation-due': packCase({}, withPack({ relaxationDue: ['J-1003'] }) as Partial<PackContext>),
  'pack.no-provisional-tool': packCase({}, withPack({ provisionalTools: ['J-1004'] }) as Partial<PackContext>),
  'pack.read-once-released': {
    fires: () => readingAsked({}, withPack({ released: null }) as Partial<PackContext>),
    satisfied: () => readingAsked({}),
  },
  'pack.read-by-calibrated-gauge': {
    fires: () => readingAsked({ gaugeIds: [] }),
    satisfied: () => readingAsked({}),
  },
};
