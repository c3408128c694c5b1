import { hash, verify } from '@node-rs/argon2';
import { Problem } from '../errors/problem.ts';

// OWASP password storage cheat sheet: argon2id, 19 MiB, two iterations, one lane.
const PARAMETERS = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

const AT_ONCE = 2;
const LONGEST_QUEUE = 400;
let running = 0;
const waiting: (() => void)[] = [];

/** At shift start a few hundred people sign in at once: hashing is queued so that memory and the other work hold. */
async function inTurn<T>(work: () => Promise<T>): Promise<T> {
  if (running >= AT_ONCE) {
    if (waiting.length >= LONGEST_QUEUE) {
      throw new Problem('busy', 'Too many people are signing in at this moment. Try again in half a minute.');
    }
    await new Promise<void>((resume) => waiting.push(resume));
  }
  running += 1;
  try {
    return await work();
  } finally {
    running -= 1;
    waiting.shift()?.();
  }
}

/** argon2id hash of a secret, with its parameters and salt in it. */
export const hashSecret = (secret: string): Promise<string> => inTurn(() => hash(secret, PARAMETERS));

let decoy: Promise<string> | undefined;

/** Compares a secret with its hash; without an account it spends the same time on a decoy. */
export async function secretMatches(secretHash: string | null, secret: string): Promise<boolean> {
  decoy ??= hashSecret('a decoy that nobody signs in with');
  const against = secretHash ?? (await decoy);
  const matches = await inTurn(() => verify(against, secret));
  return matches && secretHash !== null;
}
