import type { PackSummary } from '@seatwell/contract';
import { expect, test } from 'vitest';
import { packsWaitingForSignature } from './today-title.ts';

const pack = (number: string, ...codes: readonly string[]) =>
  ({ number, stoppers: codes.map((code) => ({ code, data: {}, who: {} })) }) as unknown as PackSummary;

test('a pack waits for a signature when nothing else stops it', () => {
  const waiting = packsWaitingForSignature([
    pack('TP-1', 'joints-not-tight', 'release-not-signed'),
    pack('TP-2', 'release-not-signed'),
    pack('TP-3', 'joints-not-proven'),
    pack('TP-4', 'joints-leaking', 'joints-not-proven'),
    pack('TP-5'),
  ]);
  expect(waiting.map(({ number }) => number)).toEqual(['TP-2', 'TP-3']);
});
