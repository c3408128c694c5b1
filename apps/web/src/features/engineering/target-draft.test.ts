import { shutdownPayloads } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { emptyTarget, targetPayload } from './target-draft.ts';

const gasketDataId = '01890000-0000-7000-8000-000000000001';
const lubricantId = '01890000-0000-7000-8000-000000000002';
const schema = shutdownPayloads['target-approved'];

describe('a target as the engineer enters it', () => {
  test('names what is missing, one thing after the other', () => {
    expect(targetPayload(emptyTarget)).toEqual({ missing: 'gasket-data-needed' });
    expect(targetPayload({ ...emptyTarget, gasketDataId })).toEqual({ missing: 'lubricant-needed' });
    expect(targetPayload({ ...emptyTarget, basis: 'target-table' })).toEqual({ missing: 'table-needed' });
    expect(targetPayload({ ...emptyTarget, basis: 'makers-torque' })).toEqual({ missing: 'torque-needed' });
  });

  test('a maker’s torque has no source of ours: without one it is not offered for approval', () => {
    const torque = { torque_Nm: 540, torqueAsEntered: { value: 540, unit: 'N·m' }, lubricant: 'molybdenum paste' };
    expect(targetPayload({ ...emptyTarget, basis: 'makers-torque', ...torque })).toEqual({ missing: 'source-needed' });
  });

  test('what it makes is what the API takes', () => {
    const calculated = targetPayload({ ...emptyTarget, gasketDataId, lubricantId, acceptedShortfall: '  ' });
    expect('payload' in calculated && schema.parse(calculated.payload)).toMatchObject({ acceptedShortfall: null });
    const maker = targetPayload({
      ...emptyTarget,
      basis: 'makers-torque',
      torque_Nm: 542.3,
      torqueAsEntered: { value: 400, unit: 'ft·lbf' },
      lubricant: 'as the maker says',
      source: 'maker’s manual, section 4',
    });
    expect('payload' in maker && schema.parse(maker.payload)).toMatchObject({ torque_Nm: 542.3 });
  });
});
