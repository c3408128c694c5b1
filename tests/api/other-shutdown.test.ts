import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, command, listCommand, refusedBy } from './support/plant.ts';
import { openShutdown, type Shutdown } from './support/shutdown.ts';
import { taleTo } from './support/tale.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

/** A second shutdown of the site with an area, a crew and a pack. */
async function secondShutdown() {
  const { plant, coordinator } = shutdown;
  const ids = { shutdownId: uuidv7(), areaId: uuidv7(), crewId: uuidv7(), packId: uuidv7() };
  const record = async <T extends Parameters<typeof command>[3]>(
    type: T,
    subjectId: string,
    payload: Parameters<typeof command<T>>[5],
  ) => accepted(await command(plant, coordinator, ids.shutdownId, type, subjectId, payload));
  await record('shutdown-opened', ids.shutdownId, {
    name: `Autumn ${ids.shutdownId}`,
    timeZone: 'Europe/Oslo',
    startsOn: '2027-09-01',
    endsOn: '2027-09-20',
    shifts: [{ name: 'day', starts: '06:00', ends: '18:00' }],
    units: 'SI',
    areaBasis: 'tensile',
  });
  await record('area-listed', ids.areaId, { areaId: ids.areaId, code: 'U52', name: 'Unit 52' });
  const crew = { crewId: ids.crewId, code: 'N1', company: 'Contractor', shift: null, personIds: [] };
  await record('crew-listed', ids.crewId, crew);
  await record('pack-planned', ids.packId, {
    packId: ids.packId,
    number: 'TP-52-01',
    systemId: null,
    areaId: ids.areaId,
    way: 'hydrotest',
    medium: 'water',
    pressure_MPa: 1,
    pressureAsEntered: null,
    hold_min: 30,
    plannedOn: null,
  });
  return ids;
}

describe('ids of another shutdown', () => {
  it('are unknown here, whatever names them', async () => {
    const other = await secondShutdown();
    const tale = await taleTo(shutdown, 'engineered');
    const hold = { holdId: uuidv7(), reason: 'Wait', releasedBy: 'engineer' as const };
    const { plant, engineer } = shutdown;
    const held = await command(plant, engineer, other.shutdownId, 'hold-placed', tale.jointId, hold);
    expect(held.status).toBe(404);
    expect(refusedBy(held)).toEqual(['unknown-joint']);
    const assigned = await tale.say('make-assigned', { change: { crewId: other.crewId } });
    expect(refusedBy(assigned)).toEqual(['unknown-crew']);
    const planned = await tale.say('make-planned', { change: { packs: [{ packId: other.packId, role: 'inside' }] } });
    expect(refusedBy(planned)).toEqual(['unknown-pack']);
    const moved = await tale.say('joint-specified', { change: { whereabouts: { areaId: other.areaId } } });
    expect(refusedBy(moved)).toEqual(['unknown-area']);
    const list = await listCommand(plant, engineer, other.shutdownId, 'target-approved', [
      {
        jointId: tale.jointId,
        makeId: tale.makeId,
        versionSeen: 3,
        payload: { basis: 'target-table', tableId: uuidv7() },
      },
    ]);
    expect(list.status).toBe(404);
  });

  it('are unknown to what is not about one joint, too', async () => {
    const other = await secondShutdown();
    const { plant, coordinator, technician, chargehand, shutdownId, procedureId } = shutdown;
    const code = other.areaId.slice(-6);
    const systemId = uuidv7();
    const system = { systemId, areaId: other.areaId, code, name: 'Feed' };
    expect(refusedBy(await command(plant, coordinator, shutdownId, 'system-listed', systemId, system))).toEqual([
      'unknown-area',
    ]);
    const punchId = uuidv7();
    const about = { jointId: null, packId: other.packId, systemId: null, owner: null };
    const item = { punchId, category: 'A' as const, text: 'Support missing', ...about };
    expect(refusedBy(await command(plant, technician, shutdownId, 'punch-raised', punchId, item))).toEqual([
      'unknown-pack',
    ]);
    const talkId = uuidv7();
    const attendees = [{ personId: technician.personId, signedBy: 'pin' as const }];
    const talk = { talkId, procedureId, revision: 1, crewId: other.crewId, heldBy: chargehand.personId, attendees };
    expect(refusedBy(await command(plant, chargehand, shutdownId, 'talk-held', talkId, talk))).toEqual([
      'unknown-crew',
    ]);
  });

  it('of a make that another joint has are refused', async () => {
    const one = await taleTo(shutdown, 'listed');
    const other = await taleTo(shutdown, 'listed');
    const taken = await one.say('make-planned', { change: { makeId: other.makeId } });
    expect(taken.status).toBe(409);
    expect(await other.stage()).toBe('planned');
  });
});
