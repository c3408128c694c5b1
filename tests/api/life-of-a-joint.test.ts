import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listJoint, openShutdown, type Shutdown } from './support/shutdown.ts';
import { engineer, makeState, onMake, openAndNipUp, release, testAndProve, tighten } from './support/work.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

describe('a plain joint', () => {
  it('goes from listed to handed over, stage by stage', async () => {
    const joint = await listJoint(shutdown);
    const stage = async () => (await makeState(shutdown, joint)).stage;
    expect(await stage()).toBe('planned');
    await engineer(shutdown, joint);
    expect(await stage()).toBe('engineered');
    await release(shutdown, joint);
    expect(await stage()).toBe('released');
    await openAndNipUp(shutdown, joint);
    expect(await stage()).toBe('nipped-up');
    await tighten(shutdown, joint);
    expect(await stage()).toBe('tight');
    const { must } = onMake(shutdown, joint);
    // One who recorded no pass of this make.
    await must(shutdown.chargehand, 'checked', { level: 'chargehand', outcome: 'accepted', reason: null });
    expect(await stage()).toBe('checked');
    await testAndProve(shutdown, [joint]);
    expect(await stage()).toBe('proven');
    await must(shutdown.coordinator, 'hand-over-offered', { systemId: shutdown.systemId, exceptions: [] });
    expect(await stage()).toBe('proven');
    await must(shutdown.operations, 'handed-over', { systemId: shutdown.systemId, exceptions: [] });
    expect(await stage()).toBe('handed-over');
  });
});
