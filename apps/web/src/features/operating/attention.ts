import type { OperatorStatus, UpkeepRun } from '@seatwell/contract';

/** Backup and verification are nightly: two hours of grace. */
const NIGHTLY_MINUTES = 26 * 60;
const MINUTE_MS = 60_000;

/** Something that an administrator should look at. */
export type Attention =
  | { readonly what: 'warning' | 'unsigned'; readonly detail: string }
  | { readonly what: 'backup-missing' | 'verification-missing' }
  | { readonly what: 'backup-failed' | 'verification-failed'; readonly run: UpkeepRun }
  | { readonly what: 'backup-old' | 'verification-old'; readonly minutes: number }
  | { readonly what: 'failed-jobs' | 'locked-shown'; readonly count: number };

function nightly(
  status: Pick<OperatorStatus, 'at' | 'upkeep'>,
  kind: 'backup' | 'verification',
): Attention | undefined {
  const run = status.upkeep.find((each) => each.kind === kind);
  if (!run) return { what: `${kind}-missing` };
  if (run.outcome === 'failed') return { what: `${kind}-failed`, run };
  const minutes = (Date.parse(status.at) - Date.parse(run.endedAt)) / MINUTE_MS;
  return minutes > NIGHTLY_MINUTES ? { what: `${kind}-old`, minutes } : undefined;
}

/** Everything of a status that needs somebody, the most urgent first. */
export function attentionOf(status: OperatorStatus): readonly Attention[] {
  const { warnings, signing, jobs, signIn } = status;
  const all: (Attention | undefined)[] = [
    nightly(status, 'verification'),
    nightly(status, 'backup'),
    ...warnings.map((detail) => ({ what: 'warning', detail }) as const),
    signing.unsigned === null ? undefined : { what: 'unsigned', detail: signing.unsigned },
    jobs.failed > 0 ? { what: 'failed-jobs', count: jobs.failed } : undefined,
    signIn.locked.length > 0 ? { what: 'locked-shown', count: signIn.locked.length } : undefined,
  ];
  return all.filter((each): each is Attention => each !== undefined);
}
