import type { SystemPage } from '@seatwell/contract';
import type { JointState } from '@seatwell/workflow';
import type { StoredSignature } from '../../../platform/record/append.ts';
import { namesOf } from '../../reading/names.ts';
import type { Reading } from '../../reading/reading.ts';
import { systemPage } from '../../systems/queries.ts';
import { siteName } from '../site-name.ts';

/** An offer or a taking over that stands in the record, with what was left unfinished. */
export interface HandOverSigned {
  readonly type: 'hand-over-offered' | 'handed-over';
  readonly signature: StoredSignature;
  readonly exceptions: readonly string[];
}

/** Everything that the list of a system is made from. */
export interface HandOverSource {
  readonly site: string;
  readonly shutdown: string;
  readonly timeZone: string;
  readonly printedAt: string;
  readonly address: string;
  readonly system: SystemPage;
  /** every joint of the system in the register, void ones too */
  readonly joints: readonly JointState[];
  readonly signed: readonly HandOverSigned[];
  readonly names: Readonly<Record<string, string | null>>;
}

async function jointsOf({ db, siteId, shutdownId }: Reading, systemId: string): Promise<JointState[]> {
  const { rows } = await db.query<{ state: JointState }>({
    name: 'hand-over-joints',
    text: `SELECT state FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND system_id = $3 ORDER BY tag_key, joint_id`,
    values: [siteId, shutdownId, systemId],
  });
  return rows.map(({ state }) => state);
}

async function signedOver({ db, siteId, shutdownId }: Reading, systemId: string): Promise<HandOverSigned[]> {
  const { rows } = await db.query<HandOverSigned>({
    name: 'hand-over-signed',
    text: `WITH own AS (SELECT joint_id FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND system_id = $3),
      said AS (
        SELECT e.event_id, e.payload FROM event e JOIN own USING (joint_id) WHERE e.site_id = $1 AND e.stream_id = $2
          AND e.type IN ('hand-over-offered', 'handed-over')
        UNION ALL
        SELECT r.event_id, r.payload FROM event_row r JOIN own USING (joint_id) WHERE r.site_id = $1 AND r.stream_id = $2)
      SELECT DISTINCT ON (e.sequence) e.type, e.signature, said.payload->'exceptions' AS exceptions
      FROM said JOIN event e ON e.site_id = $1 AND e.event_id = said.event_id
      WHERE e.type IN ('hand-over-offered', 'handed-over') AND e.signature IS NOT NULL
        AND said.payload->>'systemId' = $3::text
        AND NOT EXISTS (SELECT FROM event a WHERE a.site_id = $1 AND a.amends = e.event_id AND a.type = 'revoked')
      ORDER BY e.sequence`,
    values: [siteId, shutdownId, systemId],
  });
  return rows;
}

/** @throws Problem `not-found` for another shutdown's system */
export async function loadHandOver(reading: Reading, systemId: string, origin: string): Promise<HandOverSource> {
  const { shutdown, shutdownId, now, db, siteId } = reading;
  const system = await systemPage(reading, systemId);
  const [site, joints, signed] = await Promise.all([
    siteName(reading),
    jointsOf(reading, systemId),
    signedOver(reading, systemId),
  ]);
  const makes = joints.flatMap((joint) => joint.makes);
  const names = await namesOf(db, siteId, [
    ...makes.flatMap(({ workedBy, checkedBy }) => [...workedBy, checkedBy]),
    ...signed.map(({ signature }) => signature.personId),
  ]);
  return {
    site,
    shutdown: shutdown.name,
    timeZone: shutdown.timeZone,
    printedAt: now,
    address: `${origin}/shutdowns/${shutdownId}/systems/${systemId}`,
    system,
    joints,
    signed,
    names: names.record(),
  };
}
