import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { foundJoint, foundTo } from '../support/found.ts';
import { accepted, command, refusedBy } from '../support/plant.ts';
import { readStream } from '../support/refold.ts';
import { specification } from '../support/sample-plant.ts';
import { openShutdown, type Shutdown } from '../support/shutdown.ts';
import { type Tale, taleTo } from '../support/tale.ts';
import { nippedUp } from '../support/work.ts';

let shutdown: Shutdown;

beforeAll(async () => {
  shutdown = await openShutdown();
});

afterAll(async () => {
  await shutdown.plant.close();
});

const merge = (found: Tale, into: Tale) =>
  found.tell('joint-merged', { by: shutdown.coordinator, change: { intoJointId: into.jointId } });

const raise = async (jointId: string): Promise<string> => {
  const punchId = uuidv7();
  const item = {
    punchId,
    category: 'A' as const,
    text: 'Stud short',
    jointId,
    packId: null,
    systemId: null,
    owner: null,
  };
  const { plant, technician, shutdownId } = shutdown;
  accepted(await command(plant, technician, shutdownId, 'punch-raised', punchId, item));
  return punchId;
};

const punchItemsOf = async (jointId: string): Promise<number> => {
  const { rows } = await shutdown.plant.db.query('SELECT punch_a FROM joint WHERE joint_id = $1', [jointId]);
  return rows[0].punch_a;
};

describe('a found joint', () => {
  it('is critical and fits no procedure until it is specified', async () => {
    const found = await foundJoint(shutdown);
    expect((await found.state()).criticality).toBe('A');
    expect(refusedBy(await found.say('procedure-assigned'))).toEqual(['engineered.bolt-count']);
    await found.tell('joint-specified', { change: { specification: specification(), criticality: 'C' } });
    await found.goOn('checked', 'listed');
    expect(await found.stage()).toBe('checked');
  });

  it('is merged with another joint that this shutdown has', async () => {
    const found = await foundJoint(shutdown);
    const unknown = await found.say('joint-merged', { change: { intoJointId: uuidv7() } });
    expect(unknown.status).toBe(404);
    const itself = await found.say('joint-merged', { change: { intoJointId: found.jointId } });
    expect(itself.status).toBe(400);
  });

  it('gives its work to the joint of the register, which goes on from where it was left', async () => {
    const listed = await taleTo(shutdown, 'released');
    const found = await foundTo(shutdown, 'first pass');
    await merge(found, listed);
    expect((await found.state()).voided).toMatchObject({ why: 'merged', intoJointId: listed.jointId });
    expect(await listed.make()).toMatchObject({ stage: 'part-tight', nextPass: 2, superseded: [] });
    await listed.goOn('handed over', 'first pass');
    expect(await listed.stage()).toBe('handed-over');
    expect(refusedBy(await found.say('proven'))).toContain('make.in-work');
  });

  it('takes its open items along', async () => {
    const found = await foundTo(shutdown, 'open');
    const listed = await taleTo(shutdown, 'listed');
    await raise(found.jointId);
    await merge(found, listed);
    expect(await punchItemsOf(listed.jointId)).toBe(1);
    // Somebody without signal still knows it by its temporary number.
    await raise(found.jointId);
    expect(await punchItemsOf(listed.jointId)).toBe(2);
    expect(await punchItemsOf(found.jointId)).toBe(0);
  });

  it('loses nothing that arrives late under its temporary number', async () => {
    const found = await foundTo(shutdown, 'nipped up');
    const listed = await taleTo(shutdown, 'listed');
    await merge(found, listed);
    accepted(await found.say('pass-recorded', { change: { pass: 1 } }));
    expect(await listed.make()).toMatchObject({ stage: 'part-tight', nextPass: 2 });
    expect(await found.make()).toMatchObject({ stage: 'nipped-up' });
  });

  it('its facts are corrected on the joint of the register, and both stay in its history', async () => {
    const found = await foundTo(shutdown, 'nipped up');
    const listed = await taleTo(shutdown, 'listed');
    await merge(found, listed);
    const sound = nippedUp(shutdown);
    await listed.tell('corrected', {
      by: shutdown.inspector,
      payload: {
        eventId: found.eventId('nipped-up'),
        reason: 'The batch was read wrong',
        payload: { ...sound, gasket: { ...sound.gasket, batch: 'GB-77' } },
      },
    });
    expect((await listed.make()).fitted?.batch).toBe('GB-77');
    const { body } = await shutdown.inspector.agent
      .get(`/api/v1/shutdowns/${shutdown.shutdownId}/joints/${listed.jointId}`)
      .expect(200);
    const types = body.history.map((entry: { type: string }) => entry.type);
    expect(types).toEqual(
      expect.arrayContaining(['joint-listed', 'joint-found', 'nipped-up', 'joint-merged', 'corrected']),
    );
    expect(types.filter((type: string) => type === 'joint-merged')).toHaveLength(1);
  });

  it('a stranger who reads the stored bytes alone folds both joints as they stand', async () => {
    const { joints } = await readStream(shutdown.plant.db as never, shutdown.shutdownId);
    const { rows } = await shutdown.plant.db.query('SELECT joint_id, state FROM joint WHERE shutdown_id = $1', [
      shutdown.shutdownId,
    ]);
    for (const row of rows) expect(row.state).toEqual(joints.get(row.joint_id));
  });
});
