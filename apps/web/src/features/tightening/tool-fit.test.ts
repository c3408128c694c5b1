import type { ToolRow } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { pressureSetting, readable, toolsInOrder, torqueSetting, unfit } from './tool-fit.ts';

const tool = (more: Partial<ToolRow> = {}): ToolRow => ({
  toolId: more.tag ?? 'TW-1',
  tag: 'TW-1',
  kind: 'torque-wrench',
  maker: null,
  scaleMinimum: null,
  scaleMaximum: 400,
  scaleUnit: 'N·m',
  scaleDivision: null,
  hydraulicArea_mm2: null,
  failedOn: null,
  inForce: null,
  state: 'in-calibration',
  calibrations: [],
  ...more,
});
const calibrated = (pairs: { pressure_MPa: number; torque_Nm: number }[]): NonNullable<ToolRow['inForce']> => ({
  calibrationId: 'c',
  calibratedOn: '2026-10-01',
  validThrough: '2027-10-01',
  certificateNumber: 'C-1',
  certificate: null,
  provisional: false,
  clearedAt: null,
  pairs,
});
const SI = {
  toShown: (name: string, held: number) => (name === 'pressure' ? held * 10 : held),
  toHeld: (name: string, shown: number) => (name === 'pressure' ? shown / 10 : shown),
  unit: (name: string) => (name === 'pressure' ? 'bar' : 'N·m'),
};

describe('whether a tool fits', () => {
  test.each([
    [79, 'out-of-range'],
    [80, undefined],
    [400, undefined],
    [401, 'out-of-range'],
  ])('a wrench of 400 N·m for %d N·m: 20 to 100 %% of its scale', (value, why) => {
    expect(unfit(tool(), value, 'N·m')?.why).toBe(why);
  });

  test.each(['lapsed', 'failed', 'never-calibrated'] as const)('%s: not at any value', (state) => {
    expect(unfit(tool({ state }), 200, 'N·m')?.why).toBe(state);
  });

  test('a scale in another unit cannot be compared', () => {
    expect(unfit(tool({ scaleUnit: 'MPa' }), 200, 'N·m')?.why).toBe('other-scale');
  });

  test('those that fit come first, the others stay with their reason', () => {
    const listed = toolsInOrder(
      [tool({ tag: 'TW-0', scaleMaximum: 100 }), tool({ tag: 'TW-2' }), tool({ tag: 'P-1', kind: 'pump' })],
      'torque-wrench',
      200,
      'N·m',
    );
    expect(listed.map((each) => [each.tool.tag, each.unfit?.why])).toEqual([
      ['TW-2', undefined],
      ['TW-0', 'out-of-range'],
    ]);
  });

  test('a hydraulic wrench without the pairs of its certificate cannot be set', () => {
    const wrench = tool({ kind: 'hydraulic-wrench', inForce: calibrated([]) });
    expect(toolsInOrder([wrench], 'hydraulic-wrench', 200, 'N·m')[0]?.unfit?.why).toBe('no-chart');
  });
});

describe('what is set', () => {
  test('on a wrench, the torque at the mark of its scale', () => {
    const result = torqueSetting(332.4, tool({ scaleDivision: 5 }), undefined, SI);
    expect(result).toMatchObject({ kind: 'set', set: { torque_Nm: 330, asEntered: { value: 330, unit: 'N·m' } } });
  });

  test('without a division, whole newton metres', () => {
    expect(torqueSetting(94.6, tool(), undefined, SI)).toMatchObject({ set: { torque_Nm: 95 } });
    expect([readable(1153.4), readable(94.6), readable(12.34), readable(0.1234)]).toEqual([1153, 95, 12.3, 0.123]);
  });

  test('on a hydraulic wrench, the pressure at the mark of the gauge and the torque that results', () => {
    const pairs = [
      { pressure_MPa: 10, torque_Nm: 500 },
      { pressure_MPa: 70, torque_Nm: 3500 },
    ];
    const wrench = tool({ kind: 'hydraulic-wrench', scaleMaximum: 3500, inForce: calibrated(pairs) });
    const gauge = tool({ kind: 'pressure-gauge', scaleUnit: 'MPa', scaleDivision: 1 });
    // 1,020 N·m are 20.4 MPa on this chart; the gauge shows 20 MPa, which gives 1,000 N·m.
    expect(torqueSetting(1020, wrench, gauge, SI)).toEqual({
      kind: 'set',
      set: { torque_Nm: 1000, asEntered: { value: 200, unit: 'bar' } },
      resulting_Nm: 1000,
    });
  });

  test('beyond the chart it is refused in words', () => {
    const pairs = [
      { pressure_MPa: 10, torque_Nm: 500 },
      { pressure_MPa: 70, torque_Nm: 3500 },
    ];
    const wrench = tool({ kind: 'hydraulic-wrench', inForce: calibrated(pairs) });
    const gauge = tool({ kind: 'pressure-gauge', scaleUnit: 'MPa', scaleDivision: 1 });
    const result = torqueSetting(4000, wrench, gauge, SI);
    expect(result.kind === 'refused' && result.errors[0]?.message).toMatch(
      /4000 N·m is outside the tool’s 500 to 3500 N·m/,
    );
  });

  test('on a tensioner, the pressure at the mark of the gauge that the target was rounded to', () => {
    expect(pressureSetting(84.25, SI)).toEqual({ pressure_MPa: 84.25, asEntered: { value: 842.5, unit: 'bar' } });
  });
});
