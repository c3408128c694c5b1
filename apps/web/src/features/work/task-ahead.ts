import type { MakeAnswer } from '@seatwell/contract';
import type { QueuedFact } from '../../offline/queued-fact.ts';
import { type TaskName, taskFor } from './tasks.ts';

/** What comes after a fact that this device has said and the record has not got yet. */
function taskAfter({ type, command }: QueuedFact): TaskName | null | undefined {
  const said = command.payload as { readonly accepted?: boolean; readonly extent?: string };
  switch (type) {
    case 'opened':
      return 'faces';
    case 'faces-inspected':
      return said.accepted === false ? 'faces' : 'nip-up';
    case 'nipped-up':
    case 'pass-recorded':
    case 'stud-replaced':
    case 'loosened':
      return 'tighten';
    // From here on others decide, and they need the record.
    case 'final-round-recorded':
    case 'relaxation-pass-recorded':
    case 'checked':
    case 'leak-found':
    case 'hold-placed':
      return null;
    default:
      return undefined;
  }
}

/** The task that moves a make on: after what the record says, and what this device has said on top of it. */
export function taskAhead(
  make: Pick<MakeAnswer, 'makeId' | 'waitsFor'>,
  queued: readonly QueuedFact[],
): TaskName | null {
  const own = queued.filter(({ command }) => command.makeId === null || command.makeId === make.makeId);
  const after = own.map(taskAfter).filter((task) => task !== undefined);
  return after.length > 0 ? (after.at(-1) ?? null) : taskFor(make);
}
