import { DEFAULT_SETTINGS } from '@seatwell/workflow';
import { uuidv7 } from 'uuidv7';
import { accepted, command, siteCommand } from '../support/plant.ts';
import type { JointOptions, Shutdown } from '../support/shutdown.ts';
import { type Point, type Said, type Tale, taleTo } from '../support/tale.ts';
import { wait } from '../support/work.ts';
import { keep, settings, tool, wrenchOnly } from './hire.ts';
import { asked, type RuleCase, type RuleCases } from './rule-case.ts';

const at =
  (point: Point, options: JointOptions = {}) =>
  (shutdown: Shutdown) =>
    taleTo(shutdown, point, options);

const HOUR = 60;
const CERTIFICATE = 'c'.repeat(64);
const punchIds = keep<string>();
const gauges = keep<string>();
const provisional = keep<{ toolId: string; calibrationId: string }>();

/** Somebody raises an A item on the joint or its pack. */
const raiseA = (about: 'joint' | 'pack') => async (tale: Tale) => {
  const { plant, technician, shutdownId } = tale.shutdown;
  const punchId = punchIds.set(tale, uuidv7());
  accepted(
    await command(plant, technician, shutdownId, 'punch-raised', punchId, {
      punchId,
      category: 'A',
      text: 'Stud too short',
      jointId: about === 'joint' ? tale.jointId : null,
      packId: about === 'pack' ? tale.packId : null,
      systemId: null,
      owner: null,
    }),
  );
};

const closeIt = async (tale: Tale) => {
  const { plant, inspector, shutdownId } = tale.shutdown;
  accepted(await command(plant, inspector, shutdownId, 'punch-closed', punchIds.of(tale), { how: 'Stud changed' }));
};

const relax = async (tale: Tale) => {
  wait(tale.shutdown, 5 * HOUR);
  await tale.tell('relaxation-pass-recorded');
};

/** Tightened throughout with a wrench whose certificate nobody has confirmed yet. */
async function tightenedProvisionally(tale: Tale): Promise<Tale> {
  const certificate = { provisional: true, certificate: CERTIFICATE };
  const used = provisional.set(tale, await tool(tale.shutdown, 'torque-wrench', [450, 'N·m'], certificate));
  const said = { change: { tools: wrenchOnly(used.toolId) } };
  for (const _pass of [1, 2, 3]) await tale.tell('pass-recorded', said);
  await tale.tell('final-round-recorded', said);
  return tale;
}

const clear = async (tale: Tale) => {
  const { plant, inspector } = tale.shutdown;
  const { calibrationId } = provisional.of(tale);
  accepted(await siteCommand(plant, inspector, 'calibration-cleared', calibrationId, { calibrationId }));
};

/** The pack was released and read before this joint came to be ready. */
async function testedBefore(shutdown: Shutdown, options: JointOptions = {}): Promise<Tale> {
  const tale = await taleTo(shutdown, 'nipped up', options);
  await tale.goOn('tested', 'checked');
  return tale;
}

/** What the release says in the projection is spoilt: a release could not have said so, and the proof asks again. */
const spoilt = (what: 'boundaryWalked' | 'blindsRated' | 'reliefValvesOut'): RuleCase =>
  asked('proven', at('tested'), {
    fires: {
      first: ({ shutdown, packId }) =>
        shutdown.plant.db.query('UPDATE test_pack SET released = released || $2 WHERE pack_id = $1', [
          packId,
          JSON.stringify({ [what]: false }),
        ]),
    },
    satisfied: { first: (tale) => tale.tell('pack-released') },
  });

/** A joint of a sampled lot of its own that QC did not draw, tested. */
async function undrawn(shutdown: Shutdown): Promise<Tale> {
  for (let joints = 0; joints < 40; joints += 1) {
    const tale = await taleTo(shutdown, 'tight', { criticality: 'B' });
    if ((await tale.make()).sampleDrawn) continue;
    await tale.tell('checked', { by: shutdown.chargehand, change: { level: 'chargehand' } });
    return tale.goOn('tested', 'checked');
  }
  throw new Error('Of forty joints every one was drawn.');
}

const notHeld = { held_min: 12 };

export const PROVEN_CASES: RuleCases = {
  'proven.pack-released': asked('proven', at('checked'), {
    beside: ['proven.pressure-held', 'proven.joint-result'],
    satisfied: {
      first: async (tale) => {
        await tale.tell('pack-released');
        await tale.tell('test-reading');
      },
    },
  }),
  'proven.way': asked('proven', at('tested'), { fires: { says: { change: { way: 'gas-or-sniff-test' } } } }),
  'proven.no-A-items': asked('proven', at('tested'), {
    fires: { first: raiseA('joint') },
    satisfied: { first: closeIt },
  }),
  'proven.no-relaxation-due': asked('proven', (shutdown) => testedBefore(shutdown, { criticality: 'A' }), {
    fires: { first: (tale) => tale.goOn('checked', 'nipped up') },
    satisfied: { first: relax },
  }),
  'proven.no-provisional-tool': asked('proven', (shutdown) => testedBefore(shutdown), {
    fires: {
      first: async (tale) => {
        await tightenedProvisionally(tale);
        await tale.tell('checked');
      },
    },
    satisfied: { first: clear },
  }),
  'proven.pressure-held': asked('proven', at('checked'), {
    beside: ['proven.joint-result'],
    fires: {
      first: async (tale) => {
        await tale.tell('pack-released');
        await tale.tell('test-reading', { change: notHeld });
      },
    },
    satisfied: { first: (tale) => tale.tell('test-reading') },
  }),
  'proven.joint-result': asked('proven', at('checked'), {
    fires: {
      first: async (tale) => {
        await tale.tell('pack-released');
        await tale.tell('test-reading', { change: { results: [] } });
      },
    },
    satisfied: { first: (tale) => tale.tell('test-reading') },
  }),
  'proven.lot-sampled': asked('proven', undrawn, {
    satisfied: {
      first: (tale) => tale.tell('checked', { by: tale.shutdown.inspector, change: { level: 'sample' } }),
    },
  }),
  'proven.closure-witnessed': asked('proven', at('checked', { makes: [{ proof: 'exempt-closure' }] }), {
    fires: { says: { change: { packId: null } } },
    satisfied: { first: (tale) => tale.tell('witnessed'), says: { change: { packId: null } } },
  }),
  'proven.boundary-walked': spoilt('boundaryWalked'),
  'proven.blinds-rated': spoilt('blindsRated'),
  'proven.relief-valves-out': spoilt('reliefValvesOut'),
  'proven.metal-temperature': asked('proven', at('tested'), {
    fires: { first: ({ shutdown }) => settings(shutdown, { leastMetalTemperature_C: 20 }) },
    satisfied: { first: (tale) => tale.tell('pack-released', { change: { metalTemperature_C: 24 } }) },
    lastly: (shutdown) => settings(shutdown, { leastMetalTemperature_C: DEFAULT_SETTINGS.leastMetalTemperature_C }),
  }),
  'proven.gauges-calibrated': asked('proven', at('checked'), {
    fires: {
      first: async (tale) => {
        const { plant, inspector } = tale.shutdown;
        const { toolId } = await tool(tale.shutdown, 'test-gauge', [6, 'MPa']);
        await tale.tell('pack-released', { change: { gaugeIds: [gauges.set(tale, toolId)] } });
        await tale.tell('test-reading');
        const foundOn = plant.now.toISOString().slice(0, 10);
        accepted(await siteCommand(plant, inspector, 'tool-failed', toolId, { reason: 'Dropped', foundOn }));
      },
    },
    satisfied: { first: (tale) => tale.tell('pack-released') },
  }),
};

const releasedWrong = (change: Said<'pack-released'>['change']): RuleCase =>
  asked('pack-released', at('listed'), { fires: { says: { change: change ?? {} } } });

export const PACK_CASES: RuleCases = {
  'pack.boundary-walked': releasedWrong({ boundaryWalked: false }),
  'pack.blinds-rated': releasedWrong({ blindsRated: false }),
  'pack.relief-valves-out': releasedWrong({ reliefValvesOut: false }),
  'pack.metal-temperature': releasedWrong({ metalTemperature_C: 4 }),
  'pack.gauges-calibrated': releasedWrong({ gaugeIds: [] }),
  'pack.no-A-items': asked('pack-released', at('listed'), {
    fires: { first: raiseA('pack') },
    satisfied: { first: closeIt },
  }),
  'pack.no-relaxation-due': asked('pack-released', at('tight', { criticality: 'A' }), {
    satisfied: { first: relax },
  }),
  'pack.read-once-released': asked('test-reading', at('checked'), {
    satisfied: { first: (tale) => tale.tell('pack-released') },
  }),
  'pack.read-by-calibrated-gauge': asked('test-reading', at('checked'), {
    fires: { first: (tale) => tale.tell('pack-released'), says: { change: { gaugeIds: [] } } },
  }),
  'pack.no-provisional-tool': asked('pack-released', at('nipped up'), {
    fires: { first: tightenedProvisionally },
    satisfied: { first: clear },
  }),
};
