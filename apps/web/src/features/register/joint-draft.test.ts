import { shutdownPayloads } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { emptyJoint, jointMissing, listedOf, usualStack } from './joint-draft.ts';

const placeId = '01890000-0000-7000-8000-000000000001';
const makeId = '01890000-0000-7000-8000-000000000002';
const plain = {
  ...emptyJoint,
  tag: ' U41-E2-10 ',
  criticality: 'B',
  size: 'NPS10',
  rating: '300',
  family: 'spiral-wound',
} as const;

describe('a joint as it is typed in', () => {
  test('names what is missing', () => {
    expect(jointMissing(emptyJoint)).toBe('tag-needed');
    expect(jointMissing({ ...plain, criticality: '' })).toBe('criticality-needed');
    expect(jointMissing({ ...plain, boltCount: 16 })).toBe('thread-needed');
    expect(jointMissing(plain)).toBeUndefined();
  });

  test('becomes what the API takes, empty fields as null', () => {
    const payload = shutdownPayloads['joint-listed'].parse(listedOf(plain, placeId, makeId));
    expect(payload).toMatchObject({ tag: 'U41-E2-10', remark: null });
    expect(payload.specification.bolting).toBeNull();
    expect(payload.whereabouts.viewedFrom).toBeNull();
    expect(payload.makes).toHaveLength(1);
  });

  test('keeps pressure and temperature as they were typed, beside what is reckoned with', () => {
    const { service } = listedOf(
      {
        ...plain,
        pressure_MPa: 2,
        pressureAsEntered: { value: 20, unit: 'bar' },
        temperature_C: 200,
        temperatureAsEntered: { value: 392, unit: '°F' },
      },
      placeId,
      makeId,
    ).specification;
    expect(service).toMatchObject({ pressure_MPa: 2, pressureAsEntered: { value: 20, unit: 'bar' } });
    expect(service).toMatchObject({ temperature_C: 200, temperatureAsEntered: { value: 392, unit: '°F' } });
  });

  test('an insert joint has two gaskets in its stack', () => {
    expect(usualStack('insert').filter((part) => part.kind === 'gasket')).toHaveLength(2);
  });
});
