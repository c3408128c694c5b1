import { currentMake, type JointState, makeToWorkOn } from '@seatwell/workflow';
import type pg from 'pg';
import { expect } from 'vitest';
import { type ReadStream, readStream } from './refold.ts';

/** The projections as JSON gives them back: what is undefined is not there. */
const plain = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

const shown = (joint: JointState) => makeToWorkOn(joint) ?? currentMake(joint);

/** Counts of joints by what progress is counted for, from the folded joints. */
function counted(streamId: string, joints: Iterable<JointState>): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const joint of joints) {
    if (joint.voided) continue;
    const make = shown(joint);
    const { areaId, systemId } = joint.whereabouts;
    const keys = [
      `shutdown ${streamId}`,
      ...(areaId ? [`area ${areaId}`] : []),
      ...(systemId ? [`system ${systemId}`] : []),
      ...(make?.packs ?? []).map((pack) => `pack ${pack.packId}`),
    ];
    for (const key of keys) {
      const name = `${key} ${make?.stage ?? 'planned'}`;
      counts[name] = (counts[name] ?? 0) + 1;
    }
  }
  return counts;
}

const makeRow = (joint: JointState) => (make: JointState['makes'][number]) => ({
  make_id: make.makeId,
  joint_id: joint.jointId,
  stage: make.stage,
  purpose: make.purpose,
  work_scope: make.workScope,
  number: make.number,
  current: shown(joint)?.makeId === make.makeId,
  cancelled: make.cancelled,
  check_rejected: make.rejected,
  crew_id: make.crewId,
  lot_key: make.lotKey,
  target_hash: make.target?.inputsHash ?? null,
  tools_used: [...make.toolsUsed],
  worked_by: [...make.workedBy],
});

/**
 * Folds every joint anew from the stored bytes over a connection of the caller's, and holds the projections, the
 * counts and the stream's head against it. Answers what was read.
 */
export async function expectFoldIsProjection(client: pg.ClientBase, streamId: string): Promise<ReadStream> {
  const read = await readStream(client, streamId);
  const head = await client.query(
    'SELECT sequence::int AS sequence, encode(root, $2) AS root FROM stream_head WHERE stream_id = $1',
    [streamId, 'hex'],
  );
  expect(head.rows).toEqual([{ sequence: read.events.length, root: read.root }]);

  const joints = await client.query('SELECT joint_id, state, stage, version FROM joint WHERE shutdown_id = $1', [
    streamId,
  ]);
  expect(joints.rows.length).toBe(read.joints.size);
  for (const row of joints.rows) {
    const folded = read.joints.get(row.joint_id);
    expect(row.state).toEqual(plain(folded));
    expect(row).toMatchObject({ version: folded?.version, stage: (folded && shown(folded)?.stage) ?? 'planned' });
  }
  const makes = await client.query(
    `SELECT make_id, joint_id, stage, purpose, work_scope, number, current, cancelled, check_rejected, crew_id, lot_key,
       target_hash, tools_used, worked_by FROM make WHERE shutdown_id = $1 ORDER BY make_id`,
    [streamId],
  );
  const expected = [...read.joints.values()].flatMap((joint) => joint.makes.map(makeRow(joint)));
  expect(makes.rows).toEqual(expected.sort((a, b) => (a.make_id < b.make_id ? -1 : 1)));

  const rollup = await client.query(
    "SELECT dimension || ' ' || key || ' ' || stage AS name, count FROM rollup WHERE shutdown_id = $1 AND count <> 0",
    [streamId],
  );
  expect(Object.fromEntries(rollup.rows.map((row) => [row.name, row.count]))).toEqual(
    counted(streamId, read.joints.values()),
  );
  return read;
}
