import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, command, refusedBy, siteCommand } from '../support/plant.ts';
import { openShutdown, registerTool, type Shutdown } from '../support/shutdown.ts';
import { type Tale, taleTo } from '../support/tale.ts';
import { nippedUp, wait } from '../support/work.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

const punchOf = async (tale: Tale) =>
  (
    await shutdown.plant.db.query<{ punch_id: string; category: string; closed: boolean }>(
      'SELECT punch_id, category, closed_at IS NOT NULL AS closed FROM punch_item WHERE joint_id = $1 ORDER BY raised_at',
      [tale.jointId],
    )
  ).rows;

async function closePunch(punchId: string): Promise<void> {
  const { plant, inspector, shutdownId } = shutdown;
  accepted(await command(plant, inspector, shutdownId, 'punch-closed', punchId, { how: 'Retightened and tested' }));
}

describe('a leak at the test', () => {
  it('takes the joint back to tight; released again, repaired, checked and tested, it is proven', async () => {
    const tale = await taleTo(shutdown, 'tested');
    await tale.tell('leak-found');
    expect(await tale.make()).toMatchObject({ stage: 'tight', leaking: true, underPressure: true });
    expect(await punchOf(tale)).toMatchObject([{ category: 'A', closed: false }]);
    // Nobody touches its bolts under pressure.
    expect(refusedBy(await tale.say('final-round-recorded'))).toEqual(['make.pressure-off']);
    await tale.tell('break-released');
    await tale.tell('final-round-recorded');
    expect(await tale.make()).toMatchObject({ stage: 'tight', leaking: false, hasLeaked: true });
    await tale.tell('checked');
    expect(refusedBy(await tale.say('pack-released'))).toEqual(['pack.no-A-items']);
    const [item] = await punchOf(tale);
    await closePunch(item?.punch_id ?? '');
    await tale.goOn('handed over', 'checked');
    expect(await tale.stage()).toBe('handed-over');
  });

  it('once handed over, comes back the same way', async () => {
    const tale = await taleTo(shutdown, 'handed over');
    await tale.tell('leak-found', { change: { when: 'start-up', packId: null } });
    expect(await tale.make()).toMatchObject({ stage: 'tight', leaking: true, provenAt: null, handedOverAt: null });
  });

  it('opened again, is measured face by face', async () => {
    const tale = await taleTo(shutdown, 'tested');
    await tale.tell('leak-found');
    await tale.tell('break-released');
    await tale.tell('opened');
    const looked = { change: { faces: [1, 2].map((face) => ({ ...lookedAt, face })) } };
    expect(refusedBy(await tale.say('faces-inspected', looked))).toEqual(['faces.measured']);
  });
});

const lookedAt = {
  condition: 'clean' as const,
  flatness_mm: null,
  imperfectionDepth_mm: null,
  imperfectionExtent_mm: null,
  ringGrooveTouched: null,
  accepted: true,
  photo: null,
};

describe('a rejected check', () => {
  it('leaves the joint tight and rejected until it is tightened again', async () => {
    const tale = await taleTo(shutdown, 'tight');
    const byQuality = { by: shutdown.inspector };
    await tale.tell('checked', {
      ...byQuality,
      change: { level: 'every', outcome: 'rejected', reason: 'Nut 4 is loose' },
    });
    expect(await tale.make()).toMatchObject({ stage: 'tight', rejected: true, checkedAt: null });
    expect(refusedBy(await tale.say('checked'))).toEqual(['checked.tight-first']);
    await tale.tell('final-round-recorded');
    await tale.tell('checked');
    expect(await tale.stage()).toBe('checked');
  });
});

describe('a hold', () => {
  it('stops the work until the role that it names releases it, and never hides that bolts were loosened', async () => {
    const tale = await taleTo(shutdown, 'nipped up');
    await tale.tell('hold-placed', { by: shutdown.inspector, change: { releasedBy: 'coordinator' } });
    expect(refusedBy(await tale.say('pass-recorded'))).toEqual(['passes.not-on-hold']);
    await tale.tell('loosened');
    expect(refusedBy(await tale.say('hold-released', { by: shutdown.inspector }))).toEqual([
      'hold-released.by-its-role',
    ]);
    await tale.tell('hold-released', { by: shutdown.coordinator });
    expect((await tale.state()).holds).toEqual([]);
    await tale.tell('pass-recorded');
  });
});

describe('tools', () => {
  it('a tool that failed tightens nothing more; what it tightened stays and is known by its tool', async () => {
    const { plant, inspector } = shutdown;
    const toolId = uuidv7();
    await registerTool(plant, inspector, toolId, `TW-${toolId.slice(-6)}`, 'torque-wrench', 450, 'N·m');
    const tale = await taleTo(shutdown, 'nipped up');
    const withIt = { change: { tools: { toolId, pumpId: null, gaugeId: null } } };
    await tale.tell('pass-recorded', withIt);
    const foundOn = plant.now.toISOString().slice(0, 10);
    accepted(await siteCommand(plant, inspector, 'tool-failed', toolId, { reason: 'Reads 12 % low', foundOn }));
    expect(refusedBy(await tale.say('pass-recorded', withIt))).toEqual(['passes.tool-calibrated']);
    const { rows } = await plant.db.query('SELECT joint_id FROM make WHERE tools_used @> ARRAY[$1::uuid]', [toolId]);
    expect(rows).toEqual([{ joint_id: tale.jointId }]);
  });

  it('a provisional tool with the photo of its certificate may tighten for a day; its joint is not proven before it is cleared', async () => {
    const { plant, inspector } = shutdown;
    const late = await taleTo(shutdown, 'nipped up');
    const toolId = uuidv7();
    const tag = `TW-${toolId.slice(-6)}`;
    const provisional = { provisional: true, certificate: 'd'.repeat(64) };
    const calibrationId = await registerTool(plant, inspector, toolId, tag, 'torque-wrench', 450, 'N·m', provisional);
    const withIt = { change: { tools: { toolId, pumpId: null, gaugeId: null } } };
    for (const _pass of [1, 2, 3]) await late.tell('pass-recorded', withIt);
    await late.tell('final-round-recorded', withIt);
    await late.tell('checked');
    expect((await late.make()).provisionalTools).toEqual([toolId]);
    expect(refusedBy(await late.say('pack-released'))).toEqual(['pack.no-provisional-tool']);

    const tale = await taleTo(shutdown, 'nipped up');
    wait(shutdown, 24 * 60);
    expect(refusedBy(await tale.say('pass-recorded', withIt))).toEqual(['passes.tool-calibrated']);
    accepted(await siteCommand(plant, inspector, 'calibration-cleared', calibrationId, { calibrationId }));
    await tale.tell('pass-recorded', withIt);
    await late.goOn('proven', 'checked');
  });
});

describe('a gasket without batch or photo', () => {
  it('is kept out by a rule that asks for a reason', async () => {
    const tale = await taleTo(shutdown, 'faces accepted');
    const bare = { change: { gasket: { ...nippedUp(shutdown).gasket, batch: null } } };
    const response = await tale.say('nipped-up', bare);
    expect(response.body.errors).toMatchObject([{ code: 'nipped-up.gasket-identified', severity: 'reason' }]);
  });
});
