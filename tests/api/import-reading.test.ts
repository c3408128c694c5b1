import type { ImportPreview, ImportReading, ImportState } from '@seatwell/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { csv, HEADERS, importing, ok } from './support/importing.ts';
import { openShutdown, type Shutdown } from './support/shutdown.ts';

let shutdown: Shutdown;
let register: ReturnType<typeof importing>;
beforeAll(async () => {
  shutdown = await openShutdown();
  register = importing(shutdown);
});
afterAll(() => shutdown.close());

const lines = Array.from({ length: 1200 }, (_, row) => `L-${row},Crude,6,${row % 7 === 0 ? 'odd' : 300},,A,`);
const file = csv(HEADERS, ...lines);

const draftOf = async () => {
  const { importId, sheets } = await register.draft(file, 'register.csv');
  return { importId, choices: { sheet: sheets[0]?.name ?? '' } };
};
const start = (importId: string, choices: object) =>
  shutdown.coordinator.agent.post(`${register.base}/${importId}/readings`).send(choices);
const state = async (importId: string): Promise<ImportState> =>
  ok(await shutdown.coordinator.agent.get(`${register.base}/${importId}`));
const plain = ({ previewId: _, importId: __, ...preview }: ImportPreview) => preview;

/** The queue's own entries of readings: none is left once the last has ended. */
async function readingsEnded(): Promise<void> {
  for (;;) {
    const { rows } = await shutdown.plant.db.query(
      `SELECT FROM graphile_worker.jobs WHERE task_identifier = 'read-import'`,
    );
    if (rows.length === 0) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

describe('a long file that is read behind the answer', () => {
  it('brings the same preview as one that is waited for, and says how many rows it had', async () => {
    const { importId, choices } = await draftOf();
    const { jobId } = ok<ImportReading>(await start(importId, choices));
    expect((await register.ended(jobId)).state).toBe('done');
    const job = ok<{ done: number; total: number }>(await shutdown.coordinator.agent.get(`/api/v1/jobs/${jobId}`));
    expect(job).toMatchObject({ done: 1200, total: 1200 });
    const read = await state(importId);
    expect(read.readingJobId).toBeNull();
    expect(read.preview?.counts).toMatchObject({ rows: 1200, error: 172 });

    const other = await draftOf();
    const waitedFor = await register.preview(other.importId, other.choices);
    expect(read.preview && plain(read.preview)).toEqual(plain(waitedFor));
    expect(await register.problems(importId)).toEqual(await register.problems(other.importId));
  });

  it('ends with the refusal where the choices do not fit the file', async () => {
    const { importId, choices } = await draftOf();
    const { jobId } = ok<ImportReading>(await start(importId, { ...choices, headerRow: 9000 }));
    const job = await register.ended(jobId);
    expect(job.state).toBe('failed');
    expect(job.result.problem?.detail).toContain('Row 9000');
    expect((await state(importId)).preview).toBeNull();
  });

  it('is found again by who comes back to the page, and keeps nothing once it is given up', async () => {
    const { importId, choices } = await draftOf();
    const before = await register.preview(importId, choices);
    const rowsBefore = await register.rows(importId, 'new');
    const holder = await shutdown.plant.db.connect();
    try {
      // Whoever holds the draft keeps the reading waiting.
      await holder.query('BEGIN');
      await holder.query('SELECT FROM import_draft WHERE import_id = $1 FOR UPDATE', [importId]);
      const first = ok<ImportReading>(await start(importId, { ...choices, newCrewCompany: 'First' }));
      expect((await state(importId)).readingJobId).toBe(first.jobId);
      const second = ok<ImportReading>(await start(importId, { ...choices, newCrewCompany: 'Second' }));
      expect((await state(importId)).readingJobId).toBe(second.jobId);
      expect((await shutdown.coordinator.agent.get(`/api/v1/jobs/${first.jobId}`)).status).toBe(404);
      expect((await shutdown.coordinator.agent.delete(`${register.base}/${importId}/readings`)).status).toBe(204);
      expect((await state(importId)).readingJobId).toBeNull();
    } finally {
      await holder.query('ROLLBACK');
      holder.release();
    }
    await readingsEnded();
    expect((await state(importId)).preview).toEqual(before);
    expect(await register.rows(importId, 'new')).toEqual(rowsBefore);
  });
});
