import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SOURCES } from '../src/index.ts';

describe('sources', () => {
  it('name folders that exist', () => {
    for (const { usedIn } of Object.values(SOURCES)) {
      for (const folder of usedIn) expect(existsSync(new URL(`../src/${folder}`, import.meta.url)), folder).toBe(true);
    }
  });

  it('say how each document is held', () => {
    for (const { title, edition, held } of Object.values(SOURCES)) {
      expect(title.length + edition.length).toBeGreaterThan(10);
      expect(['read in public reproductions', 'from memory', 'common practice', 'our own']).toContain(held);
    }
  });
});
