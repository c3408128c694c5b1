import { CalcRefusal } from '@seatwell/calc';
import Fastify from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { describe, expect, it } from 'vitest';
import { simulationRoutes } from './routes.ts';

async function post(body: object) {
  const app = Fastify();
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  app.setErrorHandler((error, _request, reply) => {
    if (error instanceof CalcRefusal) return reply.code(422).send({ code: error.code });
    return reply.code((error as { statusCode?: number }).statusCode ?? 500).send({ code: 'schema' });
  });
  await app.register(simulationRoutes);
  const response = await app.inject({ method: 'POST', url: '/api/v1/calc/simulation', payload: body });
  await app.close();
  return { status: response.statusCode, body: response.json() };
}

const CROSS = [[1], [5], [3], [7], [2], [6], [4], [8]];
const REQUEST = {
  joint: {
    standard: 'ASME-B16.5',
    size: 'NPS8',
    rating: '150',
    kind: 'weld-neck-pair',
    gasket: { family: 'spiral-wound' },
  },
  target_MPa: 345,
  area: 'tensile',
  passes: [
    { percent: 30, steps: CROSS },
    { percent: 70, steps: CROSS },
    { percent: 100, steps: CROSS },
    { percent: 100, steps: [[1], [2], [3], [4], [5], [6], [7], [8]] },
  ],
};

describe('POST /api/v1/calc/simulation', () => {
  it('answers loads after each step in clockwise order, final statistics, band and limits', async () => {
    const { status, body } = await post(REQUEST);
    expect(status).toBe(200);
    expect(body.steps).toHaveLength(32);
    expect(body.steps[0].loads_percent[0]).toBeCloseTo(30, 6);
    expect(body.steps[0].gap_mm).toHaveLength(8);
    expect(body.moves).toBe(32);
    expect(Math.abs(body.final.min - 96)).toBeLessThan(3);
    expect(body.band.low.min).toBeLessThanOrEqual(body.final.min);
    expect(body.limits.length).toBeGreaterThan(3);
    expect(body.working).toBeUndefined();
  });

  it('takes steps with loads of their own, options, and several sequences to compare', async () => {
    const { status, body } = await post({
      ...REQUEST,
      passes: undefined,
      working: true,
      compare: [
        { passes: [{ steps: [{ bolts: [1, 5], load_percent: 60 }] }] },
        { passes: REQUEST.passes, options: { creep: 1e-4, initialTilt_mm: 0.3, scatter_percent: 20, seed: 3 } },
      ],
    });
    expect(status).toBe(200);
    expect(body.final).toBeUndefined();
    expect(body.compare[0].steps[0].loads_percent[4]).toBeCloseTo(60, 6);
    expect(body.compare[1].band.low.min).toBeLessThan(body.compare[1].final.min);
    expect(body.working[0].symbol).toBe('F*');
  });

  it.each([
    ['no passes', { passes: undefined }],
    ['an unknown field', { loud: true }],
    ['a number that JSON cannot hold', { target_MPa: null }],
    [
      'too many steps',
      { passes: Array.from({ length: 40 }, () => ({ steps: Array.from({ length: 80 }, () => [1]) })) },
    ],
  ])('refuses %s before anything is computed', async (_name, change) => {
    expect(await post({ ...REQUEST, ...change })).toEqual({ status: 400, body: { code: 'schema' } });
  });

  it('leaves refusals of the calculation to the error handler', async () => {
    const { status, body } = await post({ ...REQUEST, passes: [{ steps: [[9]] }] });
    expect({ status, body }).toEqual({ status: 422, body: { code: 'bolt-not-of-this-joint' } });
  });
});
