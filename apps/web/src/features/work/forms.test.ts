import type { GasketSpecification } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { boltNumbers } from './bolts-field.tsx';
import { blankFace, depthLimit, faceLack, isOverLimit, limitsFor } from './face-check.ts';
import { blankNipUp, mismatches, nipUpLack, nipUpPayload, type ToBeFitted } from './nip-up-form.ts';
import { taskFor } from './tasks.ts';

const gasket: GasketSpecification = {
  family: 'spiral-wound',
  detail: null,
  count: 1,
  contactInside_mm: 200,
  contactOutside_mm: 240,
  thickness_mm: 4.5,
};

describe('a face', () => {
  const looked = { measured: false, groove: false };
  const clean = { ...blankFace, condition: 'clean', accepted: 'yes' } as const;

  test('is neither accepted nor rejected until somebody says so', () => {
    expect(faceLack(blankFace, looked)).toBe('condition');
    expect(faceLack({ ...blankFace, condition: 'clean' }, looked)).toBe('decision');
    expect(faceLack(clean, looked)).toBeNull();
  });

  test('is measured where size, kind or criticality demand it, its marks too', () => {
    expect(faceLack(clean, { measured: true, groove: false })).toBe('flatness');
    const scored = { ...clean, condition: 'scored', flatness_mm: 0.05 } as const;
    expect(faceLack(scored, { measured: true, groove: false })).toBe('imperfection');
    expect(faceLack({ ...scored, depth_mm: 0.1, extent_mm: 3 }, { measured: true, groove: false })).toBeNull();
  });

  test('is rejected without being measured', () => {
    expect(faceLack({ ...clean, accepted: 'no' }, { measured: true, groove: true })).toBeNull();
  });

  test('has its groove touched where it has one', () => {
    expect(faceLack(clean, { measured: false, groove: true })).toBe('groove');
  });

  test('has a limit for a mark by its reach over the seating width', () => {
    const limits = limitsFor(gasket);
    expect(limits?.width_mm).toBe(20);
    const short = depthLimit(limits, { ...clean, extent_mm: 4 });
    const long = depthLimit(limits, { ...clean, extent_mm: 9 });
    expect(short).toBeGreaterThan(long ?? Number.POSITIVE_INFINITY);
    expect(isOverLimit(limits, { ...clean, extent_mm: 9, depth_mm: (long ?? 0) + 0.1 })).toBe(true);
    expect(isOverLimit(limits, { ...clean, extent_mm: 9, depth_mm: long ?? 0 })).toBe(false);
  });

  test('has no depth limit where the register lacks the seating', () => {
    const limits = limitsFor({ ...gasket, contactInside_mm: null });
    expect(depthLimit(limits, { ...clean, extent_mm: 4 })).toBeNull();
    expect(limits?.limits.flatness_mm).toBeGreaterThan(0);
  });
});

describe('nipping up', () => {
  const wanted: ToBeFitted = {
    family: 'spiral-wound',
    detail: null,
    size: 'NPS8',
    rating: '300',
    purpose: 'final',
    count: 1,
    boltGrade: 'B7',
    boltCount: 12,
    boltCondition: 'new',
    lubricant: 'test paste',
    lubricantId: '0198c2d0-0000-7000-8000-000000000002',
  };
  const read = {
    ...blankNipUp,
    family: 'spiral-wound',
    size: 'NPS8',
    rating: '300',
    purpose: 'final',
    count: 1,
  } as const;

  test('nothing is filled in beforehand: an unread form lacks its gasket', () => {
    expect(nipUpLack(blankNipUp, true)).toBe('gasket');
    expect(mismatches(blankNipUp, wanted)).toEqual([]);
  });

  test.each([
    ['family', { family: 'fibre-sheet' }],
    ['size', { size: 'NPS6' }],
    ['rating', { rating: '600' }],
    ['purpose', { purpose: 'test' }],
    ['count', { count: 2 }],
  ] as const)('a wrong %s is named', (what, more) => {
    expect(mismatches({ ...read, ...more }, wanted)).toEqual([what]);
  });

  test('the gasket is identified by batch or photo before anything else', () => {
    expect(nipUpLack(read, false)).toBe('identity');
    expect(nipUpLack(read, true)).toBe('bolting');
  });

  test('the lubricant of the target goes by its id, another one by its name', () => {
    const form = { ...read, boltCondition: 'new', lubricant: 'as-target' } as const;
    expect(nipUpPayload(form, wanted, null)).toMatchObject({
      lubricantId: wanted.lubricantId,
      lubricant: 'test paste',
    });
    const other = nipUpPayload({ ...form, lubricant: 'other', otherLubricant: 'oil ' }, wanted, null);
    expect([other.lubricantId, other.lubricant]).toEqual([null, 'oil']);
  });
});

describe('bolt numbers', () => {
  test.each([
    ['3, 4 7-9', [3, 4, 7, 8, 9]],
    ['12', [12]],
    ['', []],
    ['0', null],
    ['13', null],
    ['9-7', null],
    ['three', null],
  ] as const)('"%s" on twelve bolts', (typed, numbers) => {
    expect(boltNumbers(typed, 12)).toEqual(numbers);
  });
});

describe('what comes next', () => {
  test('the crew has a task where work is waited for, and none where a decision is', () => {
    const waits = (code: string, data = {}) => taskFor({ waitsFor: { code, by: null, data } });
    expect(waits('opening')).toBe('open');
    expect(waits('final-round')).toBe('tighten');
    expect(waits('check', { level: 'self' })).toBe('self');
    expect(waits('check', { level: 'every' })).toBeNull();
    expect(waits('release')).toBeNull();
    expect(waits('repair')).toBeNull();
  });
});
