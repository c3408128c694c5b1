import type { Payload } from '@seatwell/contract';
import { restartFrom, type TargetEvidence, upcast } from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';
import * as id from './support/ids.ts';
import { PAYLOADS } from './support/payloads.ts';
import { targetEvidence } from './support/register.ts';
import { type Story, toldTo } from './support/story.ts';
import { surroundings } from './support/world.ts';

const TENSIONER = id.uuid(90);
const passes = [
  { percent: 30, groupPressures_MPa: [19, 16] },
  { percent: 70, groupPressures_MPa: [43.5, 37.5] },
  { percent: 100, groupPressures_MPa: [62, 53.5] },
];
const target: TargetEvidence = {
  ...targetEvidence,
  torque_Nm: null,
  passes: passes.map(({ percent, groupPressures_MPa }) => ({
    percent,
    torque_Nm: null,
    pressure_MPa: groupPressures_MPa.at(-1) ?? null,
  })),
  tensioning: {
    toolId: TENSIONER,
    toolTag: 'TN-1',
    hydraulicArea_mm2: 1500,
    gaugeDivision_MPa: 0.5,
    coverage: 0.5,
    residualLoad_N: 74_500,
    loadTransferFactor: 1.2,
    toolLoad_N: 89_400,
    utilisation: 0.7,
    protrusion_mm: 19.05,
    groups: [
      [1, 3, 5, 7],
      [2, 4, 6, 8],
    ],
    passes,
    warnings: [],
  },
};
const tools = { toolId: TENSIONER, pumpId: id.PUMP, gaugeId: id.PUMP_GAUGE };
const set = (pressure_MPa: number): Pick<Payload<'pass-recorded'>, 'set' | 'tools'> => ({
  set: { pressure_MPa, asEntered: { value: pressure_MPa * 10, unit: 'bar' } },
  tools,
});
const wrench = surroundings.tools[id.HYDRAULIC_WRENCH];
const withArea = (hydraulicArea_mm2: number) => ({
  around: {
    tools: {
      ...surroundings.tools,
      [TENSIONER]: {
        ...wrench!,
        toolId: TENSIONER,
        tag: 'TN-1',
        kind: 'tensioner',
        scaleMinimum: null,
        scaleMaximum: 150,
        scaleUnit: 'MPa' as const,
        hydraulicArea_mm2,
      },
    },
  },
});
const sameTool = withArea(1500);

const nippedUp = (): Story =>
  toldTo('procedure assigned')
    .record('target-approved', {}, { around: { newTarget: target }, evidence: { target } })
    .record('break-released')
    .record('opened')
    .record('faces-inspected')
    .record('nipped-up');
const failed = (story: Story, pressure_MPa: number, choices = sameTool) => {
  const decision = story.propose('pass-recorded', { ...story.sound('pass-recorded'), ...set(pressure_MPa) }, choices);
  return decision.outcome === 'refuse' ? decision.failed.map(({ code, limit }) => `${code} ${limit}`) : [];
};

describe('a pass by tensioner', () => {
  it.each([19, 16])('takes %i MPa, the pressure of one of its groups', (pressure) => {
    expect(failed(nippedUp(), pressure)).toEqual([]);
  });

  it('asks for a reason where the pressure is that of no group', () => {
    expect(failed(nippedUp(), 25)).toEqual(['passes.set-as-target 19, 16 MPa ± 10 %']);
  });

  it('asks for a reason where the tool has another hydraulic area', () => {
    expect(failed(nippedUp(), 19, withArea(2000))).toEqual(['passes.set-as-target 1500 mm² as TN-1']);
  });

  it('asks for a reason where a torque was set', () => {
    const story = nippedUp();
    const { set: torque } = story.sound('pass-recorded');
    expect(
      story.propose('pass-recorded', { ...story.sound('pass-recorded'), set: torque, tools }, sameTool),
    ).toMatchObject({ outcome: 'refuse' });
  });

  it('and is checked at the last pressure: that of the first group is none for the check', () => {
    const story = nippedUp();
    for (const [index, { groupPressures_MPa }] of passes.entries())
      story.pass(index + 1, set(groupPressures_MPa[0] ?? 0), sameTool);
    expect(restartFrom(story.make())).toMatchObject({ finalRound: true });
    const round = story.sound('final-round-recorded');
    expect(story.propose('final-round-recorded', { ...round, ...set(62) }, sameTool)).toMatchObject({
      failed: [{ code: 'passes.set-as-target', limit: '53.5 MPa ± 5 %' }],
    });
    expect(story.record('final-round-recorded', set(53.5), sameTool).make().stage).toBe('tight');
  });
});

describe('what was recorded before tensioners had pressures', () => {
  it.each(['target-approved', 'tool-registered', 'procedure-drafted'] as const)('%s is read as written', (type) => {
    expect(upcast(type, 1, PAYLOADS[type])).toEqual(PAYLOADS[type]);
  });
});
