import type { ShutdownEventType, Stage } from '@seatwell/contract';
import { type MakeState, stagesFor } from '@seatwell/workflow';
import { uuidv7 } from 'uuidv7';
import type { SignedIn } from './plant.ts';
import type { Shutdown } from './shutdown.ts';
import { type Said, type Tale, taleTo } from './tale.ts';

export interface Work {
  /** ids that the server said it has recorded */
  readonly acknowledged: string[];
  /** ids that it refused */
  readonly refused: string[];
  /** ids whose answer never came */
  readonly unknown: string[];
}

interface Given {
  readonly seed: number;
  readonly joints: number;
  readonly people: number;
  readonly commands: number;
}

/** Numbers from 0 to below 1 that follow from the seed (mulberry32). */
function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const BY_STAGE: Readonly<Record<Stage, ShutdownEventType>> = {
  planned: 'procedure-assigned',
  engineered: 'break-released',
  released: 'opened',
  open: 'faces-inspected',
  'faces-accepted': 'nipped-up',
  'nipped-up': 'pass-recorded',
  'part-tight': 'pass-recorded',
  tight: 'checked',
  checked: 'test-reading',
  proven: 'hand-over-offered',
  'handed-over': 'taken-back',
};

/** What would come next if all went well. */
function next(make: MakeState, onHold: boolean): ShutdownEventType {
  if (onHold) return 'hold-released';
  if (make.waiting.length > 0) return 'review-settled';
  if (make.stage === 'planned' && make.procedure) return 'target-approved';
  if (make.stage === 'engineered' && !stagesFor(make.workScope).includes('open')) return 'faces-inspected';
  if (make.stage === 'part-tight' && make.nextPass > 3) return 'final-round-recorded';
  if (make.stage === 'tight' && make.leaking) return make.underPressure ? 'break-released' : 'final-round-recorded';
  if (make.stage === 'tight' && make.rejected) return 'final-round-recorded';
  if (make.offered) return 'handed-over';
  return BY_STAGE[make.stage];
}

const WILD: readonly ShutdownEventType[] = [
  'hold-placed',
  'hold-released',
  'loosened',
  'leak-found',
  'review-settled',
  'corrected',
  'revoked',
  'stud-replaced',
  'opened',
  'nipped-up',
  'pass-recorded',
  'final-round-recorded',
  'relaxation-pass-recorded',
  'make-assigned',
  'make-planned',
  'joint-specified',
  'deviation-accepted',
  'witnessed',
  'proven',
];

const REVOCABLE: readonly ShutdownEventType[] = [
  'target-approved',
  'break-released',
  'checked',
  'proven',
  'handed-over',
];

interface Stands {
  readonly make: MakeState;
  readonly onHold: boolean;
}

/** One command as somebody might send it: mostly the next one, often late, out of order or hardly sensible. */
function somebody(shutdown: Shutdown, tale: Tale, { make, onHold }: Stands, random: () => number) {
  const type = random() < 0.65 ? next(make, onHold) : (WILD[Math.floor(random() * WILD.length)] ?? 'opened');
  const minutesLate = random() < 0.25 ? Math.floor(random() * 90) : 0;
  const at = new Date(shutdown.plant.now.getTime() - minutesLate * 60_000).toISOString();
  const said: Said = { eventId: uuidv7(), at, alreadyDone: random() < 0.3 };
  if (type === 'revoked') {
    const named = REVOCABLE[Math.floor(random() * REVOCABLE.length)] ?? 'proven';
    const eventId = tale.events[named] ?? uuidv7();
    const by: Partial<Record<ShutdownEventType, SignedIn>> = {
      'target-approved': shutdown.engineer,
      'break-released': shutdown.operations,
      'handed-over': shutdown.operations,
    };
    return { type, said: { ...said, by: by[named] ?? shutdown.inspector, change: { eventId } as never } };
  }
  if (type === 'checked' && random() < 0.3) {
    const change = { level: 'every', outcome: 'rejected', reason: 'A nut is loose' } as never;
    return { type, said: { ...said, by: shutdown.inspector, change } };
  }
  if (type === 'pass-recorded') {
    const gaps = { gapsChecked_mm: [3, 3, 3, 3] };
    const left = { outcome: 'interrupted', boltsDone: 5, why: 'Rain' };
    return { type, said: { ...said, change: { ...gaps, ...(random() < 0.2 ? left : {}) } as never } };
  }
  return { type, said };
}

/**
 * Several people at once work on joints of their own pack and system, each on whichever joint comes to hand.
 * @param given.seed from which the choices follow; what they meet depends on who is first
 * @param sound told after each answer, so that a test can break something in between
 */
export async function clients(
  shutdown: Shutdown,
  { seed, joints, people, commands }: Given,
  sound: (done: number) => void = () => {},
): Promise<Work> {
  const tales: Tale[] = [];
  for (let count = 0; count < joints; count += 1) {
    const workScope = count % 4 === 3 ? 'new' : 'break-and-remake';
    tales.push(await taleTo(shutdown, 'listed', { makes: [{ workScope }] }));
  }
  const work: Work = { acknowledged: [], refused: [], unknown: [] };
  let begun = 0;
  let answered = 0;
  const one = async (person: number) => {
    const random = chance(seed + person);
    while (begun < commands) {
      begun += 1;
      const tale = tales[Math.floor(random() * tales.length)];
      if (!tale) return;
      await command(shutdown, tale, random, work);
      answered += 1;
      sound(answered);
    }
  };
  await Promise.all(Array.from({ length: people }, (_, person) => one(person)));
  return work;
}

async function command(shutdown: Shutdown, tale: Tale, random: () => number, work: Work): Promise<void> {
  const stands = { make: await tale.make(), onHold: (await tale.state()).holds.length > 0 };
  const { type, said } = somebody(shutdown, tale, stands, random);
  // A pack is tested before its joint is proven.
  if (type === 'test-reading') {
    await tale.say('pack-released').catch(() => {});
    await tale.say('test-reading').catch(() => {});
    return command(shutdown, tale, () => 0.99, work);
  }
  shutdown.plant.now = new Date(shutdown.plant.now.getTime() + 60_000);
  const eventId = said.eventId ?? '';
  try {
    const { status } = await tale.say(type, said as Said<typeof type>);
    if (status === 200) work.acknowledged.push(eventId);
    else if (status < 500) work.refused.push(eventId);
    else work.unknown.push(eventId);
  } catch {
    work.unknown.push(eventId);
  }
}
