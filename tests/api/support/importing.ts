import type {
  ImportAnswer,
  ImportChoicesInput,
  ImportDraft,
  ImportPreview,
  ImportProblem,
  ImportRow,
  ImportStarted,
} from '@seatwell/contract';
import type supertest from 'supertest';
import { uuidv7 } from 'uuidv7';
import type { Shutdown } from './shutdown.ts';

export const csv = (...lines: readonly string[]) => Buffer.from(`${lines.join('\n')}\n`);
export const HEADERS = 'Tag,Area,Size,Rating,Gasket type,Criticality,Remarks';

type Who = Shutdown['coordinator'];

export interface EndedJob {
  readonly state: 'done' | 'failed';
  readonly result: ImportAnswer & { problem?: { type: string; detail: string; errors: { code: string }[] } };
}

/** The import of a file into a shutdown, as the screen asks for it. */
export function importing(shutdown: Pick<Shutdown, 'plant' | 'shutdownId' | 'coordinator'>) {
  const { plant, shutdownId, coordinator } = shutdown;
  const base = `/api/v1/shutdowns/${shutdownId}/imports`;

  const upload = (bytes: Uint8Array, name: string, who: Who = coordinator) =>
    who.agent.post(base).attach('file', Buffer.from(bytes), name);

  const draft = async (bytes: Uint8Array, name = 'register.xlsx'): Promise<ImportDraft> =>
    ok<ImportDraft>(await upload(bytes, name));

  const choose = (importId: string, choices: ImportChoicesInput, who: Who = coordinator) =>
    who.agent.put(`${base}/${importId}/choices`).send(choices);

  const preview = async (importId: string, choices: ImportChoicesInput): Promise<ImportPreview> =>
    ok<ImportPreview>(await choose(importId, choices));

  /** A CSV previewed with its columns guessed. */
  const previewed = async (file: Buffer, choices: Partial<ImportChoicesInput> = {}): Promise<ImportPreview> => {
    const { importId, sheets } = await draft(file, 'register.csv');
    return preview(importId, { sheet: sheets[0]?.name ?? '', ...choices });
  };

  const problems = (importId: string): Promise<ImportProblem[]> =>
    pages<ImportProblem>((cursor) => coordinator.agent.get(`${base}/${importId}/problems`).query({ cursor }));

  const rows = (importId: string, kind: string): Promise<ImportRow[]> =>
    pages<ImportRow>((cursor) => coordinator.agent.get(`${base}/${importId}/rows`).query({ kind, cursor }));

  const confirm = (
    shown: Pick<ImportPreview, 'importId' | 'previewId'>,
    more: { eventId?: string; leaveOutRowsInError?: boolean; deviceTime?: string } = {},
    who: Who = coordinator,
  ) =>
    who.agent.post(`${base}/${shown.importId}/confirm`).send({
      eventId: uuidv7(),
      previewId: shown.previewId,
      deviceTime: plant.now.toISOString(),
      ...more,
    });

  const ended = async (jobId: string): Promise<EndedJob> => {
    for (;;) {
      const job = ok<EndedJob & { state: string }>(await coordinator.agent.get(`/api/v1/jobs/${jobId}`));
      if (job.state === 'done' || job.state === 'failed') return job;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };

  /** Confirms and waits for the job, which must end well. */
  const imported = async (shown: ImportPreview, more: Parameters<typeof confirm>[1] = {}): Promise<ImportAnswer> => {
    const { jobId } = ok<ImportStarted>(await confirm(shown, more));
    const job = await ended(jobId);
    if (job.state !== 'done') throw new Error(`The import failed: ${JSON.stringify(job.result)}`);
    return job.result;
  };

  return { base, upload, draft, choose, preview, previewed, problems, rows, confirm, ended, imported };
}

export function ok<Body>(response: supertest.Response): Body {
  if (response.status !== 200)
    throw new Error(`Refused with ${response.status}: ${JSON.stringify(response.body, null, 1)}`);
  return response.body as Body;
}

async function pages<Row>(page: (cursor: string) => PromiseLike<supertest.Response>): Promise<Row[]> {
  const all: Row[] = [];
  for (let cursor: string | null = '0'; cursor !== null; ) {
    const body: { rows: Row[]; next: string | null } = ok(await page(cursor));
    all.push(...body.rows);
    cursor = body.next;
  }
  return all;
}

/** What the shutdown holds of a register: an import that was refused must leave all of it as it was. */
export async function holdings({ plant, shutdownId }: Pick<Shutdown, 'plant' | 'shutdownId'>) {
  const { rows } = await plant.db.query(
    `SELECT (SELECT count(*) FROM joint WHERE shutdown_id = $1) AS joints,
       (SELECT count(*) FROM make WHERE shutdown_id = $1) AS makes,
       (SELECT count(*) FROM area WHERE shutdown_id = $1) AS areas,
       (SELECT count(*) FROM system WHERE shutdown_id = $1) AS systems,
       (SELECT count(*) FROM crew WHERE shutdown_id = $1) AS crews,
       (SELECT count(*) FROM test_pack WHERE shutdown_id = $1) AS packs,
       (SELECT count(*) FROM event WHERE stream_id = $1) AS events,
       (SELECT count(*) FROM event_row WHERE stream_id = $1) AS rows,
       (SELECT count(*) FROM joint_place) AS places,
       (SELECT coalesce(sum(count), 0) FROM rollup WHERE shutdown_id = $1 AND dimension = 'shutdown') AS counted`,
    [shutdownId],
  );
  return rows[0] as Record<string, number>;
}
