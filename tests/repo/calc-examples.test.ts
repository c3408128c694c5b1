import swagger from '@fastify/swagger';
import Fastify, { type FastifyInstance } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { beforeAll, describe, expect, it } from 'vitest';
import { calcRoutes } from '../../apps/server/src/features/calc/routes.ts';
import { simulationRoutes } from '../../apps/server/src/features/simulation/routes.ts';
import { transformWithExamples } from '../../apps/server/src/platform/http/route-examples.ts';

interface Content {
  readonly content?: { readonly 'application/json'?: { readonly example?: object } };
}
interface Operation {
  readonly parameters?: readonly {
    readonly name: string;
    readonly in: string;
    readonly example?: string;
  }[];
  readonly requestBody?: Content;
  readonly responses: Readonly<Record<string, Content>>;
}
type Document = { readonly paths: Readonly<Record<string, Readonly<Record<'get' | 'post', Operation | undefined>>>> };

/** The operations that must stay stable, and what else is offered beside them. */
const FIXED = [
  '/flanges/{standard}/{size}/{rating}',
  '/thread',
  '/torque',
  '/assembly-load',
  '/sequence',
  '/gasket-loads',
  '/target',
  '/flange-stress',
  '/elongation',
  '/tensioner',
  '/pneumatic-test',
  '/simulation',
];

let app: FastifyInstance;
let paths: Document['paths'];
beforeAll(async () => {
  app = Fastify();
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  await app.register(swagger, { openapi: { openapi: '3.1.0' }, transform: transformWithExamples });
  await app.register(calcRoutes);
  await app.register(simulationRoutes);
  await app.ready();
  paths = (app.swagger() as unknown as Document).paths;
});

const exampleOf = (content: Content | undefined) => content?.content?.['application/json']?.example;

describe('the OpenAPI document of the calculation', () => {
  it('holds every operation of the fixed API', () => {
    expect(Object.keys(paths)).toEqual(expect.arrayContaining(FIXED.map((path) => `/api/v1/calc${path}`)));
  });

  it('has an example of request and answer for each operation, and the code answers it so', async () => {
    for (const [path, { get, post }] of Object.entries(paths)) {
      const answer = exampleOf((get ?? post)?.responses['200']);
      expect(answer, `${path}: answer`).toBeDefined();
      if (post !== undefined) {
        const payload = exampleOf(post.requestBody);
        expect(payload, `${path}: request`).toBeDefined();
        const response = await app.inject({ method: 'POST', url: path, payload: payload ?? {} });
        expect(response.statusCode, `${path}: ${response.body.slice(0, 300)}`).toBe(200);
        expect(response.json(), path).toEqual(answer);
      } else {
        const url = (get?.parameters ?? [])
          .filter(({ in: place }) => place === 'path')
          .reduce((at, { name, example = '' }) => at.replace(`{${name}}`, example), path);
        const response = await app.inject(url);
        expect(response.statusCode, url).toBe(200);
        expect(response.json(), url).toEqual(answer);
      }
    }
  });
});
