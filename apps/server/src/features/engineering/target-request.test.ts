import { targetWindow } from '@seatwell/calc';
import type { JointSpecification, ProcedureBolts } from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import { jointOf, makeOf, procedureOf } from '../../../../../tests/api/support/sample-sheet.ts';
import { contentHash } from '../../platform/record/canonical.ts';
import { notChecked } from './not-checked.ts';
import { targetInputsHash } from './target-hash.ts';
import { type GasketData, targetRequest } from './target-request.ts';

const gasketData: GasketData = {
  gasketDataId: '01890000-0000-7000-8000-000000000001',
  name: 'spiral wound',
  family: 'spiral-wound',
  seating_MPa: 45,
  operating_MPa: 30,
  target_MPa: 90,
  maximum_MPa: 230,
  rotationLimit_deg: 0.3,
  source: 'gasket maker',
};
const lubricant = {
  lubricantId: '01890000-0000-7000-8000-000000000002',
  name: 'paste',
  nutFactor: 0.16,
  temperatureLimit_C: null,
  source: 'lubricant maker',
};
const bolts: ProcedureBolts = {
  condition: 'reused',
  coating: { name: 'zinc', maximum_C: null, source: null },
  washers: { perBolt: 2, insideDiameter_mm: null, outsideDiameter_mm: 44.5, thickness_mm: null },
  material: { elasticModulus_MPa: 204_000, expansion_perK: 1.2e-5, source: 'steel sheet' },
};
const temperatures = {
  assembly_C: 20,
  goingUp: { bolt_C: 90, flange_C: 140 },
  comingDown: { bolt_C: 90, flange_C: 60 },
  flangeExpansion_perK: 1.3e-5,
  source: 'study',
  stiffness: { flanges_N_per_mm: 9e6, gaskets_N_per_mm: 3e6, source: 'drawing' },
};
const make = makeOf({ boltingCondition: null, gasket: null, clampedParts: null });
const plain = jointOf(make);
const jointWith = (change: (specification: JointSpecification) => JointSpecification) => ({
  ...plain,
  specification: change(plain.specification),
});
const said = jointWith((specification) => ({
  ...specification,
  gasket: { ...specification.gasket, ribArea_mm2: 0 },
  service: {
    ...specification.service,
    testPressure_MPa: 3,
    external: { axialForce_N: 12_000, moment_Nm: 800, source: 'analysis' },
    temperatures,
  },
}));
const requestOf = (joint = said, content = procedureOf({ bolts })) =>
  targetRequest(joint, make, content, gasketData, lubricant, null, null);

describe('the request of a joint', () => {
  test('carries what register, procedure and gasket data say, and nothing that is null', () => {
    const request = requestOf();
    expect(request.bolting).toMatchObject({
      condition: 'reused',
      coating: 'zinc',
      washers: { perBolt: 2, outsideDiameter_mm: 44.5 },
      elasticModulus_MPa: 204_000,
    });
    expect(request.service).toMatchObject({ testPressure_MPa: 3, axialForce_N: 12_000, moment_Nm: 800 });
    expect(request.service.thermal).toMatchObject({
      assemblyTemperature_C: 20,
      boltExpansion_perK: 1.2e-5,
      flangeExpansion_perK: 1.3e-5,
      states: [
        { name: 'going up', boltTemperature_C: 90, flangeTemperature_C: 140 },
        { name: 'coming down', boltTemperature_C: 90, flangeTemperature_C: 60 },
      ],
    });
    expect(request.gasket.ribArea_mm2).toBe(0);
    expect(request.clampedParts?.map(({ thickness_mm }) => thickness_mm)).toEqual([39.7, 4.5, 39.7]);
    expect(JSON.stringify(request)).not.toContain('null');
    expect(targetWindow(request).window.upper.map(({ name }) => name)).toContain('bolt-thermal-gain');
  });

  test('is as it always was where nothing more is said, and so is the hash of its inputs', () => {
    const request = requestOf(plain, procedureOf());
    expect(request.service).toEqual({ pressure_MPa: 2, temperature_C: 120 });
    expect(request.bolting).toEqual({ grade: 'B7', thread: '7/8-9 UNC', count: 12, condition: 'new' });
    expect(request).not.toHaveProperty('clampedParts');
    const hashOf = (joint = plain, content = procedureOf()) =>
      targetInputsHash(joint, make, { content } as Parameters<typeof targetInputsHash>[2], ['a', 'b']);
    // The parts that releases before this one hashed: any more would put every approved target out of date.
    const { flange, gasket, service } = plain.specification;
    const { method, policy, passPercents } = procedureOf();
    const before = { flange, bolting: plain.bolting, gasket, service, method, policy, passPercents, data: ['a', 'b'] };
    expect(hashOf()).toBe(contentHash(before).toString('hex'));
    for (const other of [hashOf(said), hashOf(plain, procedureOf({ bolts }))]) expect(other).not.toBe(hashOf());
  });

  test('leaves the temperatures out where the bolts’ expansion or a thickness is not known, and the list says so', () => {
    const unmeasured = {
      ...said,
      specification: {
        ...said.specification,
        clampedParts: said.specification.clampedParts.map((part) => ({ ...part, thickness_mm: null })),
      },
    };
    expect(requestOf(said, procedureOf()).service).not.toHaveProperty('thermal');
    expect(requestOf(unmeasured).service).not.toHaveProperty('thermal');
    const thermal = (joint: typeof said, content = procedureOf({ bolts })) =>
      notChecked(joint, make, content, gasketData).find(({ limit }) => limit === 'thermal')?.missing;
    expect(thermal(said)).toBeUndefined();
    expect(thermal(said, procedureOf())).toEqual(['bolt-material']);
    expect(thermal(unmeasured)).toEqual(['clamped-thickness']);
  });

  test('asks for the ribs of girth joints only', () => {
    const limits = (kind: typeof plain.kind) =>
      notChecked({ ...plain, kind }, make, procedureOf({ bolts }), gasketData).map(({ limit }) => limit);
    expect(limits('girth')).toContain('pass-partition-ribs');
    expect(limits('flange-pair')).not.toContain('pass-partition-ribs');
  });
});
