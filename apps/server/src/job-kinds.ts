import { IMPORT_JOB } from './features/import/confirm.ts';
import { importJob } from './features/import/import-job.ts';
import { READING_JOB, readingJob } from './features/import/reading-job.ts';
import { SHEETS_JOB, sheetsJob } from './features/paper/joint-sheet/sheets-job.ts';
import { BATCH_JOB, batchJob } from './features/recording/batch-job.ts';
import type { RecordingParts } from './features/recording/record-command.ts';
import { longRunJob, SIMULATION_JOB } from './features/simulation/long-run-job.ts';
import type { JobKinds } from './platform/jobs/queue.ts';

/** Every kind of job that a process can run. */
export const jobKinds = (parts: RecordingParts): JobKinds => ({
  [BATCH_JOB]: batchJob(parts),
  [IMPORT_JOB]: importJob(parts),
  [READING_JOB]: readingJob(parts.db),
  [SHEETS_JOB]: sheetsJob(parts),
  [SIMULATION_JOB]: longRunJob,
});
