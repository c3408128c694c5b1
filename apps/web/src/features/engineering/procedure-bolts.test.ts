import { procedureContent } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { boltsMissing, emptyBolts, withCoating, withMaterial, withWasher } from './procedure-bolts.ts';
import { startingContent } from './procedure-draft.ts';

const accepted = (bolts: typeof emptyBolts) =>
  procedureContent.safeParse({
    ...startingContent,
    lubricantId: '01890000-0000-7000-8000-000000000001',
    policy: { ...startingContent.policy, source: 'site standard' },
    bolts,
  }).success;

describe('the bolts of a procedure as they are typed in', () => {
  test('a coating of the table needs no limit, another one needs its limit and the source of it', () => {
    expect(boltsMissing({ bolts: withCoating(emptyBolts, { name: 'zinc' }) })).toBeUndefined();
    const other = withCoating(emptyBolts, { name: 'nickel-zinc' });
    expect(boltsMissing({ bolts: other })).toBe('coating-limit-needed');
    const limited = withCoating(other, { maximum_C: 250 });
    expect(boltsMissing({ bolts: limited })).toBe('coating-source-needed');
    const sourced = withCoating(limited, { source: 'maker’s sheet' });
    expect(boltsMissing({ bolts: sourced })).toBeUndefined();
    expect(accepted(sourced)).toBe(true);
    expect(withCoating(sourced, { name: ' ' }).coating).toBeNull();
  });

  test('no washers per bolt means none, and what was measured goes with them', () => {
    const two = withWasher(withWasher(emptyBolts, { perBolt: 2 }), { outsideDiameter_mm: 44 });
    expect(two.washers).toEqual({ perBolt: 2, insideDiameter_mm: null, outsideDiameter_mm: 44, thickness_mm: null });
    expect(accepted(two)).toBe(true);
    expect(withWasher(two, { perBolt: 0 }).washers).toBeNull();
  });

  test('a modulus is not sent without its source', () => {
    const unsourced = withMaterial(emptyBolts, 204_000);
    expect(boltsMissing({ bolts: unsourced })).toBe('bolt-material-source-needed');
    expect(accepted(unsourced)).toBe(false);
    expect(withMaterial(unsourced, undefined).material).toBeNull();
  });
});
