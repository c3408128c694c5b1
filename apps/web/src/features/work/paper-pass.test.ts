import { describe, expect, test } from 'vitest';
import { passPayload, settingOf, type WrittenPass } from './paper-pass.ts';

const written: WrittenPass = {
  startedAt: new Date('2027-03-09T10:00:00Z'),
  endedAt: new Date('2027-03-09T10:20:00Z'),
  set: settingOf('torque', 259, { value: 191, unit: 'lbf·ft' }),
  toolId: 'T',
  pumpId: '',
  gaugeId: '',
  outcome: 'finished',
  lastBolt: 7,
  boltsDone: 5,
  why: ' gas alarm ',
};

describe('a pass as it stands on the form', () => {
  test('that went to its end has every bolt, and none where it was left', () => {
    expect(passPayload(written, 2, 12)).toMatchObject({
      pass: 2,
      set: { torque_Nm: 259, asEntered: { value: 191, unit: 'lbf·ft' } },
      tools: { toolId: 'T', pumpId: null, gaugeId: null },
      startedAt: '2027-03-09T10:00:00.000Z',
      outcome: 'finished',
      lastBolt: null,
      boltsDone: 12,
      why: null,
    });
  });

  test('that was left has its last bolt, the bolts done and why', () => {
    expect(passPayload({ ...written, outcome: 'interrupted' }, 2, 12)).toMatchObject({
      outcome: 'interrupted',
      lastBolt: 7,
      boltsDone: 5,
      why: 'gas alarm',
    });
  });

  test('a tensioner has a pressure, an elongation a length', () => {
    expect(settingOf('pressure', 70, { value: 700, unit: 'bar' })).toMatchObject({ pressure_MPa: 70 });
    expect(settingOf('gap', 0.2, { value: 0.2, unit: 'mm' })).toMatchObject({ elongation_mm: 0.2 });
  });
});
