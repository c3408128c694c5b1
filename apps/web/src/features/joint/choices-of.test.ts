import { shutdownPayloads } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { CHOICES, choicesOf } from './choices-of.ts';

interface Schema {
  readonly def?: { readonly type: string; readonly innerType?: Schema; readonly element?: Schema };
  readonly shape?: Readonly<Record<string, Schema>>;
  readonly options?: readonly string[];
}

/** Every list of codes in a schema, by its place. */
function codesIn(schema: Schema | undefined, path: readonly string[]): [string, readonly string[]][] {
  if (schema?.def?.innerType) return codesIn(schema.def.innerType, path);
  if (schema?.def?.type === 'enum') return [[path.join('.'), schema.options ?? []]];
  if (schema?.def?.element) return codesIn(schema.def.element, [...path, '*']);
  return Object.entries(schema?.shape ?? {}).flatMap(([name, each]) => codesIn(each, [...path, name]));
}

// What is recorded of a make by a crew: these facts are corrected on the joint page.
const facts = [
  'opened',
  'faces-inspected',
  'nipped-up',
  'pass-recorded',
  'final-round-recorded',
  'relaxation-pass-recorded',
  'stud-replaced',
  'loosened',
  'leak-found',
  'checked',
] as const;

describe('what may stand at a place of a record', () => {
  test('is what the contract says, for every fact of a crew and nothing beside', () => {
    const contract = facts.flatMap((type) =>
      codesIn(shutdownPayloads[type] as unknown as Schema, []).map(
        ([path, codes]) => [`${type} ${path}`, codes] as const,
      ),
    );
    expect(contract.length).toBeGreaterThan(5);
    const sorted = (entries: Iterable<readonly [string, readonly string[]]>) =>
      [...entries].map(([place, codes]) => [place, [...codes].sort()]).sort();
    expect(sorted(Object.entries(CHOICES))).toEqual(sorted(contract));
  });

  test('counts the lines of a list as one place, and leaves words free', () => {
    expect(choicesOf('faces-inspected', ['faces', 1, 'condition'])).toContain('light-marks');
    expect(choicesOf('nipped-up', ['gasket', 'batch'])).toBeUndefined();
    expect(choicesOf('no-such-event', ['extent'])).toBeUndefined();
  });
});
