import type { JointRow, RegisterAnswer, SelectionAnswer } from '@seatwell/contract';
import { REGISTER_SORTS, STAGES } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { naturalKey } from '../../apps/server/src/features/joints/natural-key.ts';
import { sizeRank } from '../../apps/server/src/features/joints/size-rank.ts';
import { accepted, command } from './support/plant.ts';
import { read } from './support/read.ts';
import { specification } from './support/sample-plant.ts';
import { type ListedJoint, listJoint, openShutdown, type Shutdown } from './support/shutdown.ts';
import { engineer, onMake } from './support/work.ts';

let shutdown: Shutdown;
const joints: ListedJoint[] = [];

const SIZES = ['NPS8', 'NPS2', 'NPS8', 'NPS12'];

beforeAll(async () => {
  shutdown = await openShutdown();
  const { plant, shutdownId, coordinator } = shutdown;
  const otherArea = uuidv7();
  accepted(
    await command(plant, coordinator, shutdownId, 'area-listed', otherArea, {
      areaId: otherArea,
      code: 'U05',
      name: 'Unit 5',
    }),
  );
  // Ties in every order: sizes, days, crews and criticalities repeat; some joints have no day and no crew.
  for (let number = 1; number <= 23; number += 1) {
    const flange = { ...specification().flange, size: SIZES[number % SIZES.length] ?? 'NPS8' };
    joints.push(
      await listJoint(shutdown, {
        tag: `U41-F${number}`,
        criticality: number % 3 === 0 ? 'A' : 'C',
        specification: specification({ flange }),
        makes: [
          {
            plannedOn: number % 4 === 0 ? null : `2027-03-${10 + (number % 3)}`,
            crewId: number % 5 === 0 ? null : shutdown.crewId,
          },
        ],
      }),
    );
  }
  for (const joint of joints.slice(0, 6)) {
    const { version } = (await read<RegisterAnswer>(shutdown, coordinator, `/joints?search=${joint.tag}`))
      .rows[0] as JointRow;
    accepted(
      await command(
        plant,
        coordinator,
        shutdownId,
        'joint-specified',
        joint.jointId,
        { whereabouts: { areaId: otherArea }, reason: null },
        { versionSeen: version },
      ),
    );
  }
  for (const joint of joints.filter((_, index) => SIZES[(index + 1) % SIZES.length] === 'NPS8')) {
    await engineer(shutdown, joint);
  }
  await onMake(shutdown, joints[0] as ListedJoint).must(shutdown.inspector, 'hold-placed', {
    holdId: uuidv7(),
    reason: 'Wrong gasket in the kit',
    releasedBy: 'inspector',
  });
});
afterAll(() => shutdown.close());

/** All rows behind a query, page by page. */
async function everyPage(query: string, limit: number): Promise<JointRow[][]> {
  const pages: JointRow[][] = [];
  let cursor: string | null = null;
  do {
    const more: string = cursor ? `&cursor=${cursor}` : '';
    const page: RegisterAnswer = await read(shutdown, shutdown.technician, `/joints?limit=${limit}&${query}${more}`);
    pages.push(page.rows);
    cursor = page.next;
  } while (cursor && pages.length < 50);
  return pages;
}

const NONE = '~ none';
const LEADS: Record<(typeof REGISTER_SORTS)[number], (row: JointRow) => number | string> = {
  tag: () => 0,
  size: (row) => sizeRank(row.size),
  stage: (row) => STAGES.indexOf(row.stage),
  planned: (row) => row.plannedOn ?? NONE,
  area: (row) => row.area?.code ?? NONE,
  system: (row) => row.system?.code ?? NONE,
  crew: (row) => row.crew?.code ?? NONE,
  criticality: (row) => row.criticality,
};

const compare = (a: string | number, b: string | number): number => (a < b ? -1 : a > b ? 1 : 0);

function inOrder(rows: readonly JointRow[], sort: (typeof REGISTER_SORTS)[number], descending: boolean): JointRow[] {
  const lead = LEADS[sort];
  const turn = descending ? -1 : 1;
  return [...rows].sort((a, b) => {
    const [left, right] = [lead(a), lead(b)];
    if ((left === NONE) !== (right === NONE)) return left === NONE ? 1 : -1;
    return turn * (compare(left, right) || Buffer.compare(naturalKey(a.tag), naturalKey(b.tag)));
  });
}

describe('the register', () => {
  it.each(REGISTER_SORTS.flatMap((sort) => [false, true].map((descending) => ({ sort, descending }))))(
    'visits each joint exactly once in the order of $sort, descending: $descending',
    async ({ sort, descending }) => {
      const pages = await everyPage(`sort=${sort}&descending=${descending}`, 4);
      expect(pages.length).toBe(6);
      const rows = pages.flat();
      expect(new Set(rows.map((row) => row.jointId)).size).toBe(joints.length);
      expect(rows).toHaveLength(joints.length);
      expect(rows.map((row) => row.tag)).toEqual(inOrder(rows, sort, descending).map((row) => row.tag));
    },
  );

  it.each(REGISTER_SORTS.flatMap((sort) => [false, true].map((descending) => ({ sort, descending }))))(
    'jumps to any row in the order of $sort, descending: $descending',
    async ({ sort, descending }) => {
      const order = `sort=${sort}&descending=${descending}`;
      const tags = (await everyPage(order, 100)).flat().map((row) => row.tag);
      for (const from of [1, 7, 11, 19, 22, 23, 500]) {
        const { rows, next } = await read<RegisterAnswer>(
          shutdown,
          shutdown.technician,
          `/joints?limit=4&${order}&from=${from}`,
        );
        expect(rows.map((row) => row.tag)).toEqual(tags.slice(from, from + 4));
        expect(next === null).toBe(from + 4 >= tags.length);
      }
    },
  );

  it('refuses a cursor of another order, and one that is none', async () => {
    const { next } = await read<RegisterAnswer>(shutdown, shutdown.technician, '/joints?limit=4');
    const base = `/api/v1/shutdowns/${shutdown.shutdownId}/joints`;
    const made = (...parts: unknown[]) => Buffer.from(JSON.stringify(parts)).toString('base64url');
    const { jointId } = joints[0] as ListedJoint;
    for (const query of [
      `?sort=planned&cursor=${made('planned', 'set', '2027-02-31', '55', jointId)}`,
      `?sort=planned&cursor=${made('planned', 'set', null, '55', jointId)}`,
      `?sort=area&cursor=${made('area', uuidv7(), null, '55', jointId)}`,
      `?cursor=${made('tag', 'all', null, '5', jointId)}`,
      `?cursor=${made('tag', 'all', null, '55', 'nobody')}`,
      `?sort=size&cursor=${next}`,
      '?cursor=nonsense',
      '?limit=501',
      '?stage=loose',
    ]) {
      const { status, body } = await shutdown.technician.agent.get(base + query);
      expect([status, body.type]).toEqual([400, 'urn:seatwell:problem:bad-input']);
    }
  });

  it('counts what is behind the filters, and the whole register beside it', async () => {
    const all = await read<RegisterAnswer>(shutdown, shutdown.technician, '/joints');
    expect(all.total).toEqual({ count: 23, exact: true });
    const engineered = all.rows.filter((row) => row.stage === 'engineered');
    expect(engineered.length).toBeGreaterThan(2);
    expect(all.withoutTarget).toBe(23 - engineered.length);
    expect(all.foundCount).toBe(0);
    const area = all.rows.find((row) => row.area?.code === 'U05')?.area?.areaId;
    const some = await read<RegisterAnswer>(
      shutdown,
      shutdown.technician,
      `/joints?area=${area}&stage=planned,engineered`,
    );
    expect(some.total).toEqual({ count: 6, exact: true });
    expect(some.rows).toHaveLength(6);
    expect(some.registerTotal).toBe(23);
  });

  it.each<[string, (row: JointRow) => boolean]>([
    ['stage=engineered', (row) => row.stage === 'engineered'],
    ['stageFrom=engineered&stageTo=open', (row) => row.stage === 'engineered'],
    ['criticality=A', (row) => row.criticality === 'A'],
    ['size=NPS2&size=NPS12', (row) => row.size === 'NPS2' || row.size === 'NPS12'],
    ['plannedUpTo=2027-03-10', (row) => row.plannedOn !== null && row.plannedOn <= '2027-03-10'],
    ['flag=on-hold', (row) => row.flags.includes('on-hold')],
    ['waitsFor=release', (row) => row.waitsFor.code === 'release'],
    ['by=engineer', (row) => row.waitsFor.by === 'engineer'],
    ['withoutTarget=true', (row) => row.stage === 'planned'],
    ['search=f1', (row) => row.tag.includes('F1')],
    ['search=%25', () => false],
    ['gasketFamily=ring-joint', () => false],
    ['rating=300&kind=flange-pair', () => true],
  ])('filters by %s', async (query, holds) => {
    const all = await read<RegisterAnswer>(shutdown, shutdown.technician, '/joints?limit=500');
    const some = await read<RegisterAnswer>(shutdown, shutdown.technician, `/joints?limit=500&${query}`);
    const expected = all.rows.filter(holds).map((row) => row.tag);
    expect(some.rows.map((row) => row.tag)).toEqual(expected);
    expect(some.total).toEqual({ count: expected.length, exact: true });
    const selection = await read<SelectionAnswer>(shutdown, shutdown.technician, `/joints/selection?${query}`);
    expect(selection.rows.map((row) => row.tag)).toEqual(expected);
    expect(selection.truncated).toBe(false);
  });

  it('gives a row what the columns of the screen show', async () => {
    const { rows } = await read<RegisterAnswer>(shutdown, shutdown.technician, '/joints?search=U41-F2&limit=1');
    expect(rows[0]).toMatchObject({
      tag: 'U41-F2',
      size: 'NPS8',
      rating: '300',
      boltCount: 12,
      boltThread: '7/8-9 UNC',
      gasketFamily: 'spiral-wound',
      area: { code: 'U05' },
      system: { code: '41-01' },
      crew: { code: 'D1' },
      packs: [{ packId: shutdown.packId, number: 'TP-41-01' }],
      punch: { A: 0, B: 0, C: 0 },
      waitsFor: { code: 'release', by: 'operations', data: {} },
    });
    expect(rows[0]?.torque_Nm).toBeGreaterThan(100);
  });

  it('knows nothing of another shutdown', async () => {
    const other = `/api/v1/shutdowns/${uuidv7()}/joints`;
    await shutdown.technician.agent.get(other).expect(404);
    const { status, body } = await shutdown.technician.agent.get(
      `/api/v1/shutdowns/${shutdown.shutdownId}/joints/${uuidv7()}`,
    );
    expect([status, body.type]).toEqual([404, 'urn:seatwell:problem:not-found']);
  });
});
