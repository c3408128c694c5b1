import { readFileSync } from 'node:fs';
import { CATALOGUE } from '@seatwell/workflow';
import { expect, it } from 'vitest';
import { sourceFiles } from './support/source-files.ts';

/** Events that no screen records, each with why. */
const WITHOUT_SCREEN: Readonly<Record<string, string>> = {
  'key-enrolled': 'facts are not signed by a key of the device yet (README, limits)',
  'key-revoked': 'facts are not signed by a key of the device yet (README, limits)',
};

const sources = sourceFiles('apps/web/src').map((file) => readFileSync(file, 'utf8'));

/** Sent by the hooks that record a command, or by a part that is given the type. */
const isSent = (type: string): boolean => {
  const sent = new RegExp(`((use|send)\\w*\\([^()]*?|type[:=]\\s*\\{?\\s*)['"]${type}['"]`);
  return sources.some((source) => sent.test(source));
};

it.each(Object.keys(CATALOGUE))('%s can be recorded on a screen', (type) => {
  expect(isSent(type), `no screen records ${type}`).toBe(!(type in WITHOUT_SCREEN));
});
