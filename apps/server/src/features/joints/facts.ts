import type { Payload } from '@seatwell/contract';
import type {
  PackFacts,
  PermitFacts,
  PersonFacts,
  ProcedureFacts,
  SystemFacts,
  TalkFacts,
  ToolFacts,
} from '@seatwell/workflow';
import type { Database, Transaction } from '../../platform/database/pool.ts';
import { loadPackFacts } from './facts-of-pack.ts';
import { loadSystemFacts } from './facts-of-system.ts';
import { loadToolFacts } from './facts-of-tools.ts';

export interface SourcedDataRow {
  readonly dataId: string;
  readonly kind: 'gasket-data' | 'lubricant' | 'maker-torque';
  readonly name: string;
  readonly content: unknown;
  readonly hash: string;
}

export interface TargetTableRow {
  readonly tableId: string;
  readonly name: string;
  readonly content: Payload<'target-table-approved'>;
}

const TABLES = {
  area: ['area', 'area_id'],
  system: ['system', 'system_id'],
  crew: ['crew', 'crew_id'],
  pack: ['test_pack', 'pack_id'],
  joint: ['joint', 'joint_id'],
} as const;

/** What belongs to a shutdown and is named by its id in events. */
export type NamedThings = keyof typeof TABLES;

/** Reads what rules look at, once each in a transaction, however many joints of a list ask for it. */
export class FactsLoader {
  readonly #tx: Database | Transaction;
  readonly #siteId: string;
  readonly #shutdownId: string;
  readonly #kept = new Map<string, Promise<unknown>>();

  constructor(tx: Database | Transaction, siteId: string, shutdownId: string) {
    this.#tx = tx;
    this.#siteId = siteId;
    this.#shutdownId = shutdownId;
  }

  #once<T>(key: string, load: () => Promise<T>): Promise<T> {
    const known = this.#kept.get(key) as Promise<T> | undefined;
    if (known) return known;
    const loading = load();
    this.#kept.set(key, loading);
    return loading;
  }

  persons(personIds: readonly string[]): Promise<Record<string, PersonFacts>> {
    const ids = [...new Set(personIds)].sort();
    if (ids.length === 0) return Promise.resolve({});
    return this.#once(`persons ${ids.join()}`, async () => {
      const { rows } = await this.#tx.query<{ person: PersonFacts }>({
        name: 'facts-of-persons',
        text: `SELECT jsonb_build_object('personId', p.person_id, 'name', coalesce(p.name, ''), 'company', p.company,
            'crewIds', coalesce((SELECT jsonb_agg(c.crew_id) FROM crew c
              WHERE c.site_id = $1 AND c.shutdown_id = $2 AND p.person_id = ANY(c.person_ids)), '[]'),
            'qualifications', coalesce((SELECT jsonb_agg(jsonb_build_object('qualificationId', q.qualification_id,
              'qualifiedFor', to_jsonb(q.qualified_for), 'validFrom', q.valid_from, 'validThrough', q.valid_through,
              'withdrawn', q.withdrawn_at IS NOT NULL) ORDER BY q.valid_through DESC, q.qualification_id)
              FROM qualification q WHERE q.site_id = $1 AND q.person_id = p.person_id), '[]')) AS person
          FROM person p WHERE p.site_id = $1 AND p.person_id = ANY($3::uuid[])`,
        values: [this.#siteId, this.#shutdownId, ids],
      });
      return Object.fromEntries(rows.map(({ person }) => [person.personId, person]));
    });
  }

  tools(toolIds: readonly string[]): Promise<Record<string, ToolFacts>> {
    const ids = [...new Set(toolIds)].sort();
    if (ids.length === 0) return Promise.resolve({});
    return this.#once(`tools ${ids.join()}`, () => loadToolFacts(this.#tx, this.#siteId, ids));
  }

  procedure(procedureId: string, revision: number): Promise<ProcedureFacts | null> {
    return this.#once(`procedure ${procedureId} ${revision}`, async () => {
      const { rows } = await this.#tx.query<{
        code: string;
        content: ProcedureFacts['content'];
        approved: boolean;
        superseded: boolean;
      }>({
        name: 'facts-of-procedure',
        text: `SELECT code, content, approved_at IS NOT NULL AS approved, superseded_at IS NOT NULL AS superseded
          FROM procedure_revision WHERE site_id = $1 AND procedure_id = $2 AND revision = $3`,
        values: [this.#siteId, procedureId, revision],
      });
      const row = rows[0];
      return row ? { procedureId, revision, ...row } : null;
    });
  }

  talks(procedureId: string): Promise<TalkFacts[]> {
    return this.#once(`talks ${procedureId}`, async () => {
      const { rows } = await this.#tx.query<Omit<TalkFacts, 'heldAt'> & { heldAt: Date }>({
        name: 'facts-of-talks',
        text: `SELECT talk_id AS "talkId", procedure_id AS "procedureId", revision, held_at AS "heldAt", attendees
          FROM talk WHERE site_id = $1 AND shutdown_id = $2 AND procedure_id = $3 ORDER BY held_at`,
        values: [this.#siteId, this.#shutdownId, procedureId],
      });
      return rows.map((row) => ({ ...row, heldAt: row.heldAt.toISOString() }));
    });
  }

  async permits(jointId: string): Promise<PermitFacts[]> {
    const { rows } = await this.#tx.query<{
      permit_id: string;
      number: string;
      isolation_reference: string | null;
      joint_ids: string[];
      valid_from: Date;
      valid_until: Date;
      withdrawn_at: Date | null;
    }>({
      name: 'facts-of-permits',
      text: `SELECT permit_id, number, isolation_reference, joint_ids, valid_from, valid_until, withdrawn_at
        FROM permit WHERE site_id = $1 AND shutdown_id = $2 AND joint_ids @> ARRAY[$3::uuid] ORDER BY valid_from`,
      values: [this.#siteId, this.#shutdownId, jointId],
    });
    return rows.map((row) => ({
      permitId: row.permit_id,
      number: row.number,
      isolationReference: row.isolation_reference,
      jointIds: row.joint_ids,
      validFrom: row.valid_from.toISOString(),
      validUntil: row.valid_until.toISOString(),
      withdrawn: row.withdrawn_at !== null,
    }));
  }

  pack(packId: string): Promise<PackFacts | null> {
    return this.#once(`pack ${packId}`, () => loadPackFacts(this.#tx, this.#siteId, this.#shutdownId, packId));
  }

  system(systemId: string): Promise<SystemFacts | null> {
    return this.#once(`system ${systemId}`, () => loadSystemFacts(this.#tx, this.#siteId, this.#shutdownId, systemId));
  }

  /** Tags of other joints where these persons record a pass in the same minutes. */
  async elsewhere(
    jointId: string,
    personIds: readonly string[],
    startedAt: string,
    endedAt: string,
  ): Promise<string[]> {
    const { rows } = await this.#tx.query<{ tag: string }>({
      name: 'facts-elsewhere',
      text: `SELECT DISTINCT (SELECT j.tag FROM joint j WHERE j.site_id = e.site_id AND j.shutdown_id = e.stream_id
            AND j.joint_id = e.joint_id) AS tag
          FROM event e
          WHERE e.site_id = $1 AND e.stream_id = $2 AND e.joint_id <> $3 AND e.performed_by && $4::uuid[]
            AND e.type IN ('pass-recorded', 'final-round-recorded', 'relaxation-pass-recorded')
            AND e.work_time >= $5::timestamptz - interval '12 hours' AND e.work_time <= $6::timestamptz + interval '12 hours'
            AND (e.payload->>'startedAt')::timestamptz < $6 AND (e.payload->>'endedAt')::timestamptz > $5
          ORDER BY tag`,
      values: [this.#siteId, this.#shutdownId, jointId, personIds, startedAt, endedAt],
    });
    return rows.map((row) => row.tag);
  }

  async lotRejections(lotKey: string | null, makeId: string): Promise<string[]> {
    if (!lotKey) return [];
    const { rows } = await this.#tx.query<{ tag: string }>({
      name: 'facts-lot-rejections',
      text: `SELECT (SELECT j.tag FROM joint j WHERE j.site_id = m.site_id AND j.shutdown_id = m.shutdown_id
            AND j.joint_id = m.joint_id) AS tag
          FROM make m
          WHERE m.site_id = $1 AND m.shutdown_id = $2 AND m.lot_key = $3 AND m.check_rejected AND m.make_id <> $4
          ORDER BY tag`,
      values: [this.#siteId, this.#shutdownId, lotKey, makeId],
    });
    return rows.map((row) => row.tag);
  }

  /** Whether QC has checked any make of a lot, whatever became of it. */
  lotSampled(lotKey: string): Promise<boolean> {
    return this.#once(`lot sampled ${lotKey}`, async () => {
      const { rows } = await this.#tx.query<{ sampled: boolean }>({
        name: 'facts-lot-sampled',
        text: `WITH lot AS (SELECT joint_id, make_id FROM make WHERE site_id = $1 AND shutdown_id = $2 AND lot_key = $3)
          SELECT EXISTS (
              SELECT FROM lot JOIN event e ON e.site_id = $1 AND e.stream_id = $2 AND e.joint_id = lot.joint_id
                AND e.make_id = lot.make_id AND e.type = 'checked' AND e.payload ->> 'level' = ANY($4::text[]))
            OR EXISTS (
              SELECT FROM lot JOIN event_row r ON r.site_id = $1 AND r.stream_id = $2 AND r.joint_id = lot.joint_id
                AND r.make_id = lot.make_id AND r.payload ->> 'level' = ANY($4::text[])
              JOIN event e ON e.site_id = r.site_id AND e.event_id = r.event_id AND e.type = 'checked') AS sampled`,
        values: [this.#siteId, this.#shutdownId, lotKey, ['sample', 'every', 'witness']],
      });
      return rows[0]?.sampled ?? false;
    });
  }

  async unclosedPunchA(jointId: string): Promise<number> {
    const { rows } = await this.#tx.query<{ count: number }>({
      name: 'facts-punch-a',
      text: `SELECT count(*) AS count FROM punch_item WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = $3
          AND category = 'A' AND closed_at IS NULL`,
      values: [this.#siteId, this.#shutdownId, jointId],
    });
    return rows[0]?.count ?? 0;
  }

  /** Which of these ids this shutdown has. */
  known(what: NamedThings, ids: readonly string[]): Promise<ReadonlySet<string>> {
    const [table, column] = TABLES[what];
    const wanted = [...ids].sort();
    return this.#once(`known ${what} ${wanted.join()}`, async () => {
      const { rows } = await this.#tx.query<{ id: string }>({
        name: `facts-known-${what}`,
        text: `SELECT ${column} AS id FROM ${table} WHERE site_id = $1 AND shutdown_id = $2 AND ${column} = ANY($3::uuid[])`,
        values: [this.#siteId, this.#shutdownId, wanted],
      });
      return new Set(rows.map((row) => row.id));
    });
  }

  crewPersons(crewId: string): Promise<string[]> {
    return this.#once(`crew ${crewId}`, async () => {
      const { rows } = await this.#tx.query<{ person_ids: string[] }>({
        name: 'facts-crew',
        text: 'SELECT person_ids FROM crew WHERE site_id = $1 AND shutdown_id = $2 AND crew_id = $3',
        values: [this.#siteId, this.#shutdownId, crewId],
      });
      return rows[0]?.person_ids ?? [];
    });
  }

  /** Entered data with its source, and the hash that tells whether it is still what a target relied on. */
  sourcedData(dataId: string): Promise<SourcedDataRow | null> {
    return this.#once(`data ${dataId}`, async () => {
      const { rows } = await this.#tx.query<SourcedDataRow>({
        name: 'facts-sourced-data',
        text: 'SELECT data_id AS "dataId", kind, name, content, hash FROM sourced_data WHERE site_id = $1 AND data_id = $2',
        values: [this.#siteId, dataId],
      });
      return rows[0] ?? null;
    });
  }

  targetTable(tableId: string): Promise<TargetTableRow | null> {
    return this.#once(`table ${tableId}`, async () => {
      const { rows } = await this.#tx.query<TargetTableRow>({
        name: 'facts-target-table',
        text: 'SELECT table_id AS "tableId", name, content FROM target_table WHERE site_id = $1 AND table_id = $2',
        values: [this.#siteId, tableId],
      });
      return rows[0] ?? null;
    });
  }
}
