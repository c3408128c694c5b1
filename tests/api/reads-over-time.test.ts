import type { JointRow, MyJointsAnswer, RegisterAnswer, TodayAnswer } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, command, engage } from './support/plant.ts';
import { read } from './support/read.ts';
import { type ListedJoint, listJoint, openShutdown, type Shutdown } from './support/shutdown.ts';
import { engineer, faces, onMake, openAndNipUp, openingBy, release, tighten, wait } from './support/work.ts';

let shutdown: Shutdown;
let critical: ListedJoint;
let open: ListedJoint;

beforeAll(async () => {
  shutdown = await openShutdown();
  critical = await listJoint(shutdown, { tag: 'U41-CRITICAL', criticality: 'A' });
  open = await listJoint(shutdown, { tag: 'U41-OPEN' });
  for (const joint of [critical, open]) {
    await engineer(shutdown, joint);
    await release(shutdown, joint);
  }
  await openAndNipUp(shutdown, critical);
  await tighten(shutdown, critical);
  const { must } = onMake(shutdown, open);
  await must(shutdown.technician, 'opened', { ...openingBy(shutdown), openEndsCovered: false });
  await must(shutdown.technician, 'faces-inspected', {
    faces: faces(2),
    bolting: { condition: 'new', accepted: true },
    accepted: true,
    remark: null,
  });
});
afterAll(() => shutdown.close());

const rowsOf = async (query: string): Promise<JointRow[]> =>
  (await read<RegisterAnswer>(shutdown, shutdown.technician, `/joints?${query}`)).rows;
const tagsOf = async (query: string): Promise<string[]> => (await rowsOf(query)).map((row) => row.tag);

// Nothing is recorded from here on: only the clock runs.
describe('what time alone changes', () => {
  it('is at first a witness point and a relaxation pass that will be due', async () => {
    const [row] = await rowsOf('search=critical');
    expect(row).toMatchObject({ waitsFor: { code: 'witness', by: 'witness' }, flags: ['relaxation-due'] });
    expect(await tagsOf('flag=relaxation-due')).toEqual(['U41-CRITICAL']);
    expect(await tagsOf('flag=relaxation-overdue')).toEqual([]);
    expect(await tagsOf('waitsFor=relaxation-pass')).toEqual([]);
    expect(await tagsOf('waitsFor=nip-up')).toEqual(['U41-OPEN']);
  });

  it('becomes a relaxation pass for the crew after four hours', async () => {
    wait(shutdown, 5 * 60);
    const [row] = await rowsOf('search=critical');
    expect(row?.waitsFor).toMatchObject({ code: 'relaxation-pass', by: 'technician' });
    expect(await tagsOf('waitsFor=relaxation-pass')).toEqual(['U41-CRITICAL']);
    expect(await tagsOf('waitsFor=witness')).toEqual([]);
    expect(await tagsOf('by=technician&stage=tight')).toEqual(['U41-CRITICAL']);
    const mine = await read<MyJointsAnswer>(shutdown, shutdown.technician, '/my-joints');
    expect(mine.rows.find((each) => each.tag === 'U41-CRITICAL')).toMatchObject({ can: 'now' });
    const { signOffs, stillIn } = await read<TodayAnswer>(shutdown, shutdown.coordinator, '/today');
    expect(signOffs.some((each) => each.waitsFor === 'witness')).toBe(false);
    expect(stillIn).toMatchObject({ openEnds: 1, openEndsUncovered: 1 });
  });

  it('is overdue after a day, and accepted faces are to be looked at again', async () => {
    wait(shutdown, 21 * 60);
    expect((await rowsOf('search=critical'))[0]?.flags).toEqual(['relaxation-overdue']);
    expect(await tagsOf('flag=relaxation-overdue')).toEqual(['U41-CRITICAL']);
    expect(await tagsOf('flag=relaxation-due')).toEqual([]);
    expect((await rowsOf('search=open'))[0]?.waitsFor.code).toBe('faces-again');
    expect(await tagsOf('waitsFor=faces-again')).toEqual(['U41-OPEN']);
    expect(await tagsOf('waitsFor=nip-up')).toEqual([]);
  });
});

describe('a role with a reach', () => {
  it('is asked only for what lies within it', async () => {
    const { plant, shutdownId, coordinator } = shutdown;
    const areaId = uuidv7();
    accepted(await command(plant, coordinator, shutdownId, 'area-listed', areaId, { areaId, code: 'U9', name: 'U9' }));
    const elsewhere = await engage(plant, 'engineer', 'Else Where', { reach: { kind: 'area', id: areaId } });
    const here = await engage(plant, 'engineer', 'Here Tofore', { reach: { kind: 'area', id: shutdown.areaId } });
    const joint = await listJoint(shutdown, { tag: 'U41-NEW' });
    const list = async (who: typeof here) =>
      (await read<MyJointsAnswer>(shutdown, who, '/my-joints')).rows.map((row) => [row.tag, row.can]);
    expect(await list(elsewhere)).toEqual([]);
    expect(await list(here)).toEqual([[joint.tag, 'now']]);
  });
});
