import { foldHistory, stagesFor } from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';
import { toldTo } from './support/story.ts';

describe('the life of a plain joint', () => {
  it('passes every stage of its scope, from the register to the hand-over', () => {
    const points = [
      ['listed', 'planned'],
      ['engineered', 'engineered'],
      ['released', 'released'],
      ['open', 'open'],
      ['faces accepted', 'faces-accepted'],
      ['nipped up', 'nipped-up'],
      ['first pass', 'part-tight'],
      ['every pass', 'part-tight'],
      ['tight', 'tight'],
      ['checked', 'checked'],
      ['proven', 'proven'],
      ['handed over', 'handed-over'],
    ] as const;
    for (const [point, stage] of points) expect(toldTo(point).make().stage, point).toBe(stage);
    expect(new Set(points.map(([, stage]) => stage))).toEqual(new Set(stagesFor('break-and-remake')));
  });

  it('folds to the same state from the whole history', () => {
    const story = toldTo('handed over');
    expect(foldHistory(story.events)).toEqual(story.state);
    expect(story.state.version).toBe(story.events.length);
  });
});
