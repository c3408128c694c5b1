import { jsonSchemaTransform } from 'fastify-type-provider-zod';

/** A request with the answer that the running code gives it. */
export interface RouteExample {
  readonly body?: unknown;
  readonly answer: unknown;
}

declare module 'fastify' {
  interface FastifyContextConfig {
    /** asked when the OpenAPI document is made, so that no start waits for it */
    example?: () => RouteExample;
  }
}

interface Exampled {
  examples?: unknown[];
}

/** As the zod transform of the OpenAPI document, with the example of a route beside its request and its answer. */
export const transformWithExamples: typeof jsonSchemaTransform = (input) => {
  const made = jsonSchemaTransform(input);
  const example = input.route.config?.example?.();
  if (example === undefined) return made;
  const { body, response } = made.schema as { body?: Exampled; response?: Record<string, Exampled> };
  if (body !== undefined && example.body !== undefined) body.examples = [example.body];
  const answer = response?.['200'];
  if (answer !== undefined) answer.examples = [example.answer];
  return made;
};
