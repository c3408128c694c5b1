import { answerSimulation, passesOf } from '@seatwell/calc';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openShutdown, type Shutdown } from './support/shutdown.ts';

const PATH = '/api/v1/calc/simulation/runs';
const flange = {
  joint: {
    standard: 'ASME-B16.5',
    size: 'NPS12',
    rating: '300',
    kind: 'weld-neck-pair',
    gasket: { family: 'spiral-wound' },
  },
  target_MPa: 345,
  area: 'tensile',
} as const;
const patterns = ['legacy', 'quadrant', 'circular'] as const;
const compare = patterns.map((pattern) => ({
  passes: passesOf({ pattern }, 16),
  options: { scatter_percent: 20, seed: 3 },
}));

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

async function ended(jobId: string) {
  for (;;) {
    const { body } = await shutdown.engineer.agent.get(`/api/v1/jobs/${jobId}`).expect(200);
    if (body.state === 'done' || body.state === 'failed') return body;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

const start = (body: object) => shutdown.engineer.agent.post(PATH).send(body);

describe('a long simulation', () => {
  it('runs as a job with its progress, and ends at the numbers of the direct answer', async () => {
    const { body } = await start({ ...flange, compare, scatterRuns: 30 }).expect(202);
    const job = await ended(body.jobId);
    // One run of its own, three for the band of the gasket and thirty scattered for each of three patterns.
    expect(job).toMatchObject({ kind: 'simulate-tightening', state: 'done', done: 102, total: 102 });
    const direct = answerSimulation({ ...flange, compare: [{ passes: compare[0]!.passes }] });
    const { cases, limits } = job.result;
    expect(cases).toHaveLength(3);
    expect(cases[0].final.min).toBeCloseTo(direct.compare?.[0]?.final.min ?? 0, 9);
    expect(cases[0].band.low.min).toBeLessThan(cases[0].final.min);
    expect(limits).toEqual(direct.limits);
  });

  it('that the calculation refuses ends as failed, with the reason', async () => {
    const { body } = await start({ ...flange, compare: [{ passes: [{ steps: [[99]] }] }] }).expect(202);
    expect(await ended(body.jobId)).toMatchObject({
      state: 'failed',
      result: { problem: { errors: [{ code: 'bolt-not-of-this-joint' }] } },
    });
  });

  it('beyond its size is refused before anything runs', async () => {
    const pass = { steps: Array.from({ length: 400 }, () => [1]) };
    const long = { passes: Array.from({ length: 5 }, () => pass), options: { scatter_percent: 20, seed: 1 } };
    await start({ ...flange, compare: [long, long], scatterRuns: 1000 }).expect(400);
    await start({ ...flange, compare: [] }).expect(400);
  });
});
