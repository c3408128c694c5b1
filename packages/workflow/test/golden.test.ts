import { readdirSync, readFileSync } from 'node:fs';
import { type EventType, shutdownPayloads, sitePayloads } from '@seatwell/contract';
import {
  CATALOGUE,
  foldHistory,
  foldJoint,
  type JointState,
  needsFullFold,
  type RecordedEvent,
  upcast,
} from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';

const folder = new URL('./golden/', import.meta.url);
const read = (path: string): unknown => JSON.parse(readFileSync(new URL(path, folder), 'utf8'));

interface History {
  readonly name: string;
  readonly events: readonly RecordedEvent[];
  readonly expected: {
    readonly version: number;
    readonly voided: string | null;
    readonly makes: readonly Record<string, unknown>[];
  };
}

const summary = (joint: JointState): History['expected'] => ({
  version: joint.version,
  voided: joint.voided?.why ?? null,
  makes: joint.makes.map((make) => ({
    stage: make.stage,
    nextPass: make.nextPass,
    passes: make.passes.length,
    leaking: make.leaking,
    retighten: make.retighten,
    cancelled: make.cancelled,
    waiting: make.waiting.length,
    superseded: make.superseded.map(({ type }) => type),
  })),
});

// What a release recorded is never edited here: a fold that reads it otherwise is wrong, or needs an upcaster.
describe.each(readdirSync(folder))('events of %s', (release) => {
  const payloads = read(`${release}/payloads.json`) as Record<string, { v: number; payload: unknown }>;
  const histories = read(`${release}/histories.json`) as readonly History[];
  const schemas = { ...shutdownPayloads, ...sitePayloads };

  it.each(Object.entries(payloads))('%s is read by this release', (type, { v, payload }) => {
    expect(schemas[type as EventType].safeParse(upcast(type, v, payload))).toMatchObject({ success: true });
  });

  it.each(histories)('$name', ({ events, expected }) => {
    expect(summary(foldHistory(events)!)).toEqual(expected);
    let state: JointState | null = null;
    events.forEach((event, index) => {
      state = needsFullFold(state, event) ? foldHistory(events.slice(0, index + 1)) : foldJoint(state, event);
    });
    expect(summary(state!)).toEqual(expected);
  });
});

describe('payload versions', () => {
  it('every event has a golden payload from the release that brought it', () => {
    const kept = readdirSync(folder).flatMap((release) => Object.keys(read(`${release}/payloads.json`) as object));
    expect([...new Set(kept)].sort()).toEqual(Object.keys(CATALOGUE).sort());
  });

  it('a newer version, a version that is none and an unknown type are refused', () => {
    expect(() => upcast('opened', 2, {})).toThrow(/payload version 2; this release reads 1 to 1/);
    expect(() => upcast('opened', 0, {})).toThrow(/payload version 0/);
    expect(() => upcast('opened', 1.5, {})).toThrow(/payload version 1.5/);
    expect(() => upcast('burst', 1, {})).toThrow(/not in the catalogue/);
  });
});
