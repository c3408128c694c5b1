import type { ToolRow } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { isUsable, toolStates, toolsFound } from './tool-search.ts';

const tool = (tag: string, state: ToolRow['state'], maker: string | null = null) => ({ tag, state, maker }) as ToolRow;

describe('finding tools', () => {
  const rows = [tool('HW-112', 'lapsing'), tool('TW-3', 'failed', 'Ahlberg'), tool('HW-7', 'in-calibration')];
  const tags = (typed: string, states: readonly string[] = []) => toolsFound(rows, typed, states).map((row) => row.tag);

  test('by a part of the tag or maker', () => {
    expect(tags('hw')).toEqual(['HW-112', 'HW-7']);
    expect(tags('ahl')).toEqual(['TW-3']);
  });

  test('by state', () => {
    expect(tags('', ['failed', 'lapsing'])).toEqual(['HW-112', 'TW-3']);
  });
});

test('a lapsed, failed or never calibrated tool is not usable', () => {
  expect(toolStates.filter((state) => isUsable({ state }))).toEqual(['in-calibration', 'lapsing', 'provisional']);
});
