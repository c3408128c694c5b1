import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { appendLeaf, frontierRoot, rootOfLeaves } from '../../apps/server/src/platform/record/merkle.ts';
import { accepted, command, engage, openPlant, type Plant, type SignedIn } from './support/plant.ts';
import { springShutdown } from './support/sample-plant.ts';

let plant: Plant;
let coordinator: SignedIn;
let shutdownId: string;

beforeAll(async () => {
  plant = await openPlant();
  coordinator = await engage(plant, 'coordinator', 'Cora Dinator');
  shutdownId = uuidv7();
  accepted(await command(plant, coordinator, shutdownId, 'shutdown-opened', shutdownId, springShutdown));
});
afterAll(() => plant.close());

const listArea = (areaId: string, code: string, eventId?: string) =>
  command(
    plant,
    coordinator,
    shutdownId,
    'area-listed',
    areaId,
    { areaId, code, name: code },
    eventId ? { eventId } : {},
  );

describe('a command', () => {
  it('gets the same answer when it is sent twice, and is recorded once', async () => {
    const areaId = uuidv7();
    const eventId = uuidv7();
    const at = plant.now.toISOString();
    const send = () =>
      command(
        plant,
        coordinator,
        shutdownId,
        'area-listed',
        areaId,
        { areaId, code: 'A1', name: 'A1' },
        { eventId, at },
      );
    const first = accepted(await send());
    const second = accepted(await send());
    expect(second).toEqual(first);
    const { rows } = await plant.db.query('SELECT count(*) AS n FROM event WHERE event_id = $1', [eventId]);
    expect(rows[0].n).toBe(1);
  });

  it('is refused when its id has said something else before', async () => {
    const eventId = uuidv7();
    accepted(await listArea(uuidv7(), 'A2', eventId));
    const response = await listArea(uuidv7(), 'A3', eventId);
    expect(response.status).toBe(409);
    expect(response.body.type).toBe('urn:seatwell:problem:event-id-reused');
  });

  it('is recorded once when it arrives many times at once', async () => {
    const areaId = uuidv7();
    const eventId = uuidv7();
    const at = plant.now.toISOString();
    const answers = await Promise.all(
      Array.from({ length: 8 }, () =>
        command(
          plant,
          coordinator,
          shutdownId,
          'area-listed',
          areaId,
          { areaId, code: 'A4', name: 'A4' },
          { eventId, at },
        ),
      ),
    );
    expect(new Set(answers.map((answer) => JSON.stringify(accepted(answer)))).size).toBe(1);
  });
});

describe('the record', () => {
  it('refuses update, delete and truncate to the role of the app', async () => {
    for (const sql of [
      'UPDATE event SET type = type',
      'DELETE FROM event',
      'TRUNCATE event',
      'DELETE FROM event_row',
    ]) {
      await expect(plant.db.query(sql)).rejects.toThrow(/permission denied/);
    }
    const { rows } = await plant.db.query('SELECT current_user AS role, current_database() AS database');
    expect(rows[0].role).toBe(`${rows[0].database}_app`);
  });

  it('has a Merkle root that follows from its stored leaves', async () => {
    const { rows } = await plant.db.query('SELECT leaf FROM event WHERE stream_id = $1 ORDER BY sequence', [
      shutdownId,
    ]);
    const head = await plant.db.query('SELECT sequence, root FROM stream_head WHERE stream_id = $1', [shutdownId]);
    expect(rows.length).toBeGreaterThan(3);
    expect(head.rows[0].sequence).toBe(rows.length);
    expect(head.rows[0].root).toEqual(rootOfLeaves(rows.map((row: { leaf: Buffer }) => row.leaf)));
  });

  it('has an empty tree whose root is the hash of nothing, and one leaf that is its own root', () => {
    // RFC 9162 section 2.1.1
    expect(frontierRoot([]).toString('hex')).toBe('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855');
    const leaf = Buffer.alloc(32, 7);
    expect(frontierRoot(appendLeaf([], 0, leaf))).toEqual(leaf);
  });

  it('holds no name in the clear', async () => {
    const { rows } = await plant.db.query("SELECT canonical FROM event WHERE type = 'person-registered'");
    expect(rows.length).toBeGreaterThan(1);
    for (const row of rows) {
      expect(row.canonical.toString('utf8')).not.toContain('Dinator');
      expect(row.canonical.toString('utf8')).toContain('nameCommitment');
    }
  });
});
