import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkJointRecord, checkRecord } from '../../apps/server/record-verifier.mjs';
import type { JointRecord } from '../../apps/server/src/features/records/joint-record.ts';
import { inclusionProofs } from '../../apps/server/src/platform/record/inclusion.ts';
import { leafHash, rootOfLeaves } from '../../apps/server/src/platform/record/merkle.ts';
import { repositoryRoot } from '../../apps/server/src/platform/repository-root.ts';
import { acceptedList, listCommand } from './support/plant.ts';
import { type ListedJoint, listJoint, openShutdown, type Shutdown } from './support/shutdown.ts';
import { engineer, jointState, openAndNipUp, release } from './support/work.ts';

let shutdown: Shutdown;
let folder: string;
let worked: ListedJoint;
let early: { sequence: number; root: string };
let whole: string;
let ofJoint: JointRecord;

const head = async (): Promise<{ sequence: number; root: string }> => {
  const { rows } = await shutdown.plant.db.query(
    "SELECT sequence, encode(root, 'hex') AS root FROM stream_head WHERE stream_id = $1",
    [shutdown.shutdownId],
  );
  return rows[0];
};

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'seatwell-record-'));
  shutdown = await openShutdown();
  worked = await listJoint(shutdown);
  const other = await listJoint(shutdown);
  early = await head();
  await assignBoth(worked, other);
  await engineer(shutdown, worked);
  await release(shutdown, worked);
  await openAndNipUp(shutdown, worked);
  const { agent } = shutdown.witness;
  const base = `/api/v1/shutdowns/${shutdown.shutdownId}`;
  whole = ((await agent.get(`${base}/record`).responseType('blob').expect(200)).body as Buffer).toString('utf8');
  ofJoint = (await agent.get(`${base}/joints/${worked.jointId}/record`).expect(200)).body;
});
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  await shutdown.close();
});

async function assignBoth(...joints: ListedJoint[]): Promise<void> {
  const { plant, coordinator, shutdownId, crewId } = shutdown;
  const rows = await Promise.all(
    joints.map(async ({ jointId, makeId }) => ({
      jointId,
      makeId,
      versionSeen: (await jointState(shutdown, jointId)).version,
      payload: { crewId, plannedOn: '2027-03-12' },
    })),
  );
  acceptedList(await listCommand(plant, coordinator, shutdownId, 'make-assigned', rows));
}

const lines = () => whole.trimEnd().split('\n');
/** The record with the line of one event changed. */
const withLine = (index: number, change: (line: { sequence: number; event: string; rows: string[] }) => object) =>
  lines().map((line, at) => (at === index ? JSON.stringify(change(JSON.parse(line))) : line));

describe('the record of a shutdown', () => {
  it('gives the head, checked by a program that knows nothing else', async () => {
    const { sequence, root } = await head();
    expect(await checkRecord(lines())).toEqual({ events: sequence, rows: 2, root });
  });

  it('goes on from a head that somebody kept earlier', async () => {
    expect(await checkRecord(lines(), [early])).toMatchObject({ events: expect.any(Number) });
    expect(await checkRecord(lines(), [{ ...early, root: 'f'.repeat(64) }])).toEqual([
      expect.stringMatching(/^Up to event \d+ the record gives .*, and the head kept is f+/),
    ]);
  });

  it('holds no name', () => {
    for (const name of ['Theo', 'Technician', 'Dinator']) expect(whole.includes(name), name).toBe(false);
  });

  it.each([
    ['an event changed', () => withLine(3, (line) => ({ ...line, event: line.event.replace('"v":1', '"v":2') }))],
    ['an event left out', () => lines().toSpliced(3, 1)],
    ['two events exchanged', () => lines().toSpliced(3, 2, lines()[4] ?? '', lines()[3] ?? '')],
    ['the end cut off', () => lines().slice(0, -2)],
    ['a row of a list changed', () => lines().map((line) => line.replaceAll('2027-03-12', '2027-03-13'))],
    ['a row of a list left out', () => lessARow()],
  ])('with %s is no longer right', async (_what, change) => {
    const changed = change();
    expect(changed).not.toEqual(lines());
    expect(Array.isArray(await checkRecord(changed))).toBe(true);
  });

  const lessARow = () =>
    lines().map((line) => {
      const said = JSON.parse(line) as { rows?: string[] };
      return said.rows?.length ? JSON.stringify({ ...said, rows: said.rows.slice(1) }) : line;
    });
});

describe('the record of a joint', () => {
  it('is proven to be under the head, lists included', async () => {
    const { root } = await head();
    const types = ofJoint.events.map(({ event }) => (JSON.parse(event) as { type: string }).type);
    expect(types).toEqual(expect.arrayContaining(['joint-listed', 'make-assigned', 'opened', 'nipped-up']));
    expect(checkJointRecord(ofJoint)).toEqual({ events: types.length, root });
    expect(checkJointRecord(ofJoint, [await head()])).toMatchObject({ root });
  });

  it('is not, once anything in it is changed', () => {
    const change = (place: number, more: object) => ({
      ...ofJoint,
      events: ofJoint.events.map((event, at) => (at === place ? { ...event, ...more } : event)),
    });
    const first = ofJoint.events[0];
    const listed = ofJoint.events.findIndex((event) => event.rows.length > 0);
    const row = ofJoint.events[listed]?.rows[0];
    if (!first || !row) throw new Error('The joint has events of both kinds.');
    for (const forged of [
      change(0, { event: first.event.replace('flange-pair', 'manway') }),
      change(0, { sequence: first.sequence + 1 }),
      change(0, { proof: first.proof.slice(1) }),
      change(listed, { rows: [{ ...row, said: row.said.replace('2027-03-12', '2027-03-13') }] }),
      change(listed, { rows: [{ ...row, row: row.row + 1 }] }),
      { ...ofJoint, head: early },
      { ...ofJoint, jointId: uuidv7() },
    ])
      expect(Array.isArray(checkJointRecord(forged))).toBe(true);
  });

  it('is asked for in its own shutdown', async () => {
    const path = `/api/v1/shutdowns/${shutdown.shutdownId}/joints/${uuidv7()}/record`;
    await shutdown.witness.agent.get(path).expect(404);
  });
});

describe('the verifier by itself', () => {
  const run = (words: readonly string[]) =>
    new Promise<{ code: number; output: string }>((resolve) => {
      const program = join(repositoryRoot(), 'apps', 'server', 'record-verifier.mjs');
      execFile(process.execPath, [program, ...words], (error, output, complaints) =>
        resolve({ code: typeof error?.code === 'number' ? error.code : 0, output: output + complaints }),
      );
    });

  it('says of a file whether anything is wrong, and ends with 1 when it is', async () => {
    const file = join(folder, 'record.jsonl');
    writeFileSync(file, whole);
    const { sequence, root } = await head();
    const right = await run([file, '--head', `${early.sequence}:${early.root}`]);
    expect(right.code).toBe(0);
    expect(right.output.split('\n')[0]).toBe(`${sequence} events give the head ${root}. Nothing is wrong.`);
    writeFileSync(join(folder, 'joint.json'), JSON.stringify(ofJoint));
    expect((await run([join(folder, 'joint.json')])).code).toBe(0);
    writeFileSync(file, lines().slice(0, -1).join('\n'));
    const wrong = await run([file]);
    expect(wrong.code).toBe(1);
    expect(wrong.output).toContain('cut short');
  });

  it('proves every leaf of trees of every small size, and none that is not there', () => {
    for (let size = 1; size <= 33; size += 1) {
      const texts = Array.from({ length: size }, (_, index) => JSON.stringify({ jointId: 'j', eventId: `${index}` }));
      const leaves = texts.map((text) => leafHash(Buffer.from(text)));
      const proofs = inclusionProofs(leaves, [...leaves.keys()]);
      const record = (index: number, text = texts[index]) => ({
        head: { sequence: size, root: rootOfLeaves(leaves).toString('hex') },
        jointId: 'j',
        events: [
          {
            sequence: index + 1,
            event: text,
            proof: (proofs.get(index) ?? []).map((hash) => hash.toString('hex')),
            rows: [],
          },
        ],
      });
      for (const index of leaves.keys()) {
        expect(checkJointRecord(record(index)), `${index} of ${size}`).toMatchObject({ events: 1 });
        expect(Array.isArray(checkJointRecord(record(index, '{"jointId":"j","eventId":"x"}')))).toBe(true);
      }
    }
  });
});
