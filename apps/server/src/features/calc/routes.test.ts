import { CalcRefusal } from '@seatwell/calc';
import Fastify, { type FastifyInstance } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { beforeAll, describe, expect, it } from 'vitest';
import { CALC_EXAMPLES } from './examples.ts';
import { calcRoutes } from './routes.ts';

let app: FastifyInstance;
beforeAll(async () => {
  app = Fastify();
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  app.setErrorHandler((error, _request, reply) => {
    if (error instanceof CalcRefusal) return reply.code(422).send({ errors: error.errors });
    return reply.code(500).send({ message: String(error) });
  });
  await app.register(calcRoutes);
});

const post = async (operation: string, payload: object) => {
  const response = await app.inject({ method: 'POST', url: `/api/v1/calc${operation}`, payload });
  return { status: response.statusCode, body: response.json() };
};

const TARGET = {
  flange: { standard: 'ASME-B16.5', size: 'NPS8', rating: '300' },
  gasket: {
    family: 'spiral-wound',
    contactOutside_mm: 263.7,
    contactInside_mm: 233.4,
    limits: { seating_MPa: 50, operating_MPa: 20, target_MPa: 100, maximum_MPa: 200, source: 'maker’s sheet, 2024' },
  },
  bolting: { grade: 'B7', condition: 'new' },
  service: { pressure_MPa: 3, temperature_C: 100 },
  lubricant: { nutFactor: 0.16, source: 'procedure' },
  method: 'torque-wrench',
  area: 'root',
  policy: { minimumBoltUtilisation: 0.2, maximumBoltUtilisation: 0.6, scatter_percent: 20 },
};

// One request for each operation, with the fields that the fixed API promises in the answer.
const OPERATIONS: readonly [string, object, readonly string[]][] = [
  [
    '/thread',
    { thread: 'M20' },
    ['nominalDiameter_mm', 'pitchDiameter_mm', 'rootArea_mm2', 'rootAreaBasis', 'pcc1RootArea_mm2'],
  ],
  ['/torque', { thread: 'M20', load_N: 1e5, model: 'nut-factor', nutFactor: 0.2 }, ['torque_Nm', 'load_N']],
  [
    '/torque',
    {
      thread: '1-1/8-8 UN',
      torque_Nm: 500,
      model: 'friction',
      threadFriction: 0.12,
      bearingFriction: 0.12,
      bearingOuterDiameter_mm: 46,
      bearingInnerDiameter_mm: 31.8,
    },
    ['torque_Nm', 'load_N'],
  ],
  ['/assembly-load', { thread: 'M12', yield_MPa: 640, utilisation: 0.9, threadFriction: 0.12 }, ['load_N']],
  ['/sequence', { boltCount: 16, pattern: 'legacy', numbering: 'order' }, ['order', 'passes', 'positions', 'moves']],
  [
    '/gasket-loads',
    { gasketOutside_mm: 374, gasketInside_mm: 340, m: 3, y_MPa: 69, pressure_MPa: 2, moment_Nm: 5000 },
    [
      'effectiveWidth_mm',
      'reactionDiameter_mm',
      'equivalentPressure_MPa',
      'hydrostaticEndForce_N',
      'gasketOperatingLoad_N',
      'operatingBoltLoad_N',
      'seatingBoltLoad_N',
    ],
  ],
  ['/target', TARGET, ['window', 'target', 'spread', 'tool', 'passes']],
  [
    '/flange-stress',
    CALC_EXAMPLES.flangeStress,
    ['K', 'T', 'U', 'Y', 'Z', 'F', 'V', 'f', 'e', 'd', 'L', 'momentOperating_Nm', 'rigidityJ', 'ok'],
  ],
  [
    '/elongation',
    { thread: 'M30x3', load_N: 2e5, effectiveLength_mm: 250, elasticModulus_MPa: 207_000, area: 'root' },
    ['elongation_mm'],
  ],
  [
    '/tensioner',
    {
      thread: 'M36',
      residualLoad_N: 3e5,
      effectiveLength_mm: 150,
      hydraulicArea_mm2: 4000,
      coverage: 0.5,
      yield_MPa: 720,
    },
    ['loadTransferFactor', 'toolLoad_N', 'pressure_MPa', 'utilisation'],
  ],
  [
    '/pneumatic-test',
    { testPressure_MPa: 1, volume_m3: 10, method: 'PCC-2-2018' },
    ['storedEnergy_J', 'tntEquivalent_kg', 'distance_m', 'governedBy'],
  ],
];

describe('every operation', () => {
  it.each(OPERATIONS)('%s answers with warnings, and with working when asked', async (operation, payload, fields) => {
    const plain = await post(operation, payload);
    expect(plain.status, JSON.stringify(plain.body)).toBe(200);
    expect(Object.keys(plain.body)).toEqual(expect.arrayContaining([...fields, 'warnings']));
    expect(plain.body).not.toHaveProperty('working');
    const { body } = await post(operation, { ...payload, working: true });
    expect(body.working.length).toBeGreaterThan(0);
  });

  it.each(OPERATIONS)(
    '%s refuses a field that it does not know, such as one in another unit',
    async (operation, payload) => {
      const { status, body } = await post(operation, { ...payload, load_kN: 5 });
      expect(status).toBe(422);
      expect(body.errors[0].code).toMatch(/^schema-/);
    },
  );
});

describe('flanges', () => {
  it('answers a flange and lists what is held', async () => {
    const flange = await app.inject('/api/v1/calc/flanges/ASME-B16.5/NPS8/150');
    expect(flange.json()).toMatchObject({ boltCount: 8, boltThread: '3/4-10 UNC', boltCircle_mm: 298.5 });
    const held = (await app.inject('/api/v1/calc/flanges')).json();
    expect(held.standards.map(({ standard }: { standard: string }) => standard)).toContain('EN-1092-1');
  });

  it('asks for the bolt count of DN 65 PN 16 and takes it from the query', async () => {
    const open = await app.inject('/api/v1/calc/flanges/EN-1092-1/DN65/PN16');
    expect(open.statusCode).toBe(422);
    expect(open.json().errors[0].code).toBe('bolt-count-must-be-given');
    const given = await app.inject('/api/v1/calc/flanges/EN-1092-1/DN65/PN16?boltCount=4');
    expect(given.json().boltCount).toBe(4);
  });
});

describe('refusals', () => {
  it('names the missing gasket data', async () => {
    const { limits: _limits, ...gasket } = TARGET.gasket;
    const { status, body } = await post('/target', { ...TARGET, gasket });
    expect(status).toBe(422);
    expect(body.errors[0]).toMatchObject({ path: 'gasket.limits', code: 'gasket-data-missing' });
  });

  it('names every wrong input at once', async () => {
    const { body } = await post('/elongation', {
      thread: 'M20',
      load_N: -1,
      effectiveLength_mm: 0,
      elasticModulus_MPa: 207_000,
    });
    expect(body.errors.map(({ path }: { path: string }) => path)).toEqual(['load_N', 'effectiveLength_mm']);
  });
});
