import type { FastifyInstance, FastifySchema } from 'fastify';
import type { z } from 'zod';

/** An operation of the calculation: what it takes, what it answers, and a request to show in the documentation. */
export interface CalcOperation<Body extends z.ZodType, Answer extends z.ZodType> {
  /** Below `/api/v1/calc`. */
  readonly path: string;
  readonly summary: string;
  readonly body: Body;
  readonly answer: Answer;
  readonly example: z.input<Body>;
  readonly run: (body: z.output<Body>) => z.input<Answer>;
  /** Largest body in bytes, where the usual megabyte is too much. */
  readonly bodyLimit?: number;
}

/** The example with the answer that the code gives it now: it cannot go stale. */
export function calcExample<Body extends z.ZodType, Answer extends z.ZodType>(
  operation: Pick<CalcOperation<Body, Answer>, 'body' | 'answer' | 'example' | 'run'>,
): { readonly body: unknown; readonly answer: unknown } {
  const { body, answer, example, run } = operation;
  return { body: example, answer: JSON.parse(JSON.stringify(answer.parse(run(body.parse(example))))) };
}

/** Registers an operation under `/api/v1/calc`. Refusals of the calculation are thrown as they are. */
export function calcOperation<Body extends z.ZodType, Answer extends z.ZodType>(
  app: FastifyInstance,
  operation: CalcOperation<Body, Answer>,
): void {
  const { path, summary, body, answer, run, bodyLimit } = operation;
  // Fastify's own types stay out: body and answer are tied to their schemas by CalcOperation.
  const schema: FastifySchema = { tags: ['calculation'], summary, body, response: { 200: answer } };
  app.post(
    `/api/v1/calc${path}`,
    {
      ...(bodyLimit === undefined ? {} : { bodyLimit }),
      config: { action: 'use-calculation', example: () => calcExample(operation) },
      schema,
    },
    async (request): Promise<unknown> => run(request.body as z.output<Body>),
  );
}
