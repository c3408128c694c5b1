import { evaluateRules, type ToolFacts } from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';
import * as id from './support/ids.ts';
import { toldTo } from './support/story.ts';
import { tools } from './support/world.ts';

const wrench = tools[id.WRENCH]!;
const failedOn = '2027-02-20';

/** The rules that stop a pass on 2 March with the wrench as given. */
function stopped(change: Partial<ToolFacts>): string[] {
  const story = toldTo('nipped up');
  const payload = story.sound('pass-recorded');
  const context = story.context('pass-recorded', payload, {
    around: { tools: { ...tools, [id.WRENCH]: { ...wrench, ...change } } },
  });
  return evaluateRules({ type: 'pass-recorded', payload }, context).map((rule) => rule.code);
}

const calibratedOn = (day: string, change: object = {}) => [
  ...wrench.calibrations,
  { ...wrench.calibrations[0]!, calibrationId: id.uuid(90), calibratedOn: day, ...change },
];

describe('a wrench that was found wrong', () => {
  it('tightens nothing on the strength of its old certificate', () => {
    expect(stopped({ failedOn })).toEqual(['passes.tool-calibrated']);
  });

  it('is in use again once it was calibrated anew', () => {
    expect(stopped({ failedOn, calibrations: calibratedOn('2027-02-25') })).toEqual([]);
  });

  it('is not in use again by a certificate that nobody has confirmed, nor by one of the same day', () => {
    const provisional = calibratedOn('2027-02-25', { provisional: true, clearedAt: null });
    expect(stopped({ failedOn, calibrations: provisional })).toEqual(['passes.tool-calibrated']);
    expect(stopped({ failedOn, calibrations: calibratedOn(failedOn) })).toEqual(['passes.tool-calibrated']);
  });

  it('did tighten before it failed', () => {
    expect(stopped({ failedOn: '2027-03-09' })).toEqual([]);
  });
});
