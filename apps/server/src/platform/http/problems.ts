import { CalcRefusal } from '@seatwell/calc';
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import fp from 'fastify-plugin';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { Problem, type ProblemItem } from '../errors/problem.ts';

const STATUS_CODES: Readonly<Record<number, 'bad-input' | 'too-large' | 'media-type-refused' | 'too-many-requests'>> = {
  400: 'bad-input',
  // An upload that is no upload.
  406: 'media-type-refused',
  413: 'too-large',
  415: 'media-type-refused',
  429: 'too-many-requests',
};

function validationItems(error: FastifyError): ProblemItem[] {
  return (error.validation ?? []).map((issue) => ({
    path: `${error.validationContext ?? 'body'}${issue.instancePath.replaceAll('/', '.')}`,
    code: issue.keyword ?? 'invalid',
    message: issue.message ?? 'This value is not accepted.',
  }));
}

/** Every error as a problem of the catalogue; what we did not foresee becomes `internal` and is logged, not shown. */
export function toProblem(error: unknown): Problem {
  if (error instanceof Problem) return error;
  if (error instanceof CalcRefusal)
    return new Problem('calculation-refused', error.message, error.errors as ProblemItem[]);
  const fastifyError = error as FastifyError;
  if (hasZodFastifySchemaValidationErrors(error)) {
    const items = validationItems(fastifyError);
    const first = items[0];
    return new Problem('bad-input', first ? `${first.path}: ${first.message}` : 'The request cannot be read.', items);
  }
  const { code } = error as { code?: string };
  // Class 22 of SQLSTATE, data exception: what no schema saw and the database cannot hold.
  if (code?.length === 5 && code.startsWith('22')) {
    return new Problem(
      'bad-input',
      'A value of the request cannot be stored: a wrong id, a number or day out of range, or a character that text may not hold.',
    );
  }
  if (code === '57014' || code === '53300')
    return new Problem('busy', 'The database took too long. Try again in a moment; nothing was recorded.');
  const known = fastifyError.statusCode ? STATUS_CODES[fastifyError.statusCode] : undefined;
  if (known) return new Problem(known, fastifyError.message);
  return new Problem(
    'internal',
    'Nothing was recorded. Try again; if it happens again, give the administrator the time and this request’s id.',
  );
}

/** problem+json for every error and every unknown address of the API. */
export const problemsPlugin = fp(
  async (app: FastifyInstance) => {
    const send = (request: FastifyRequest, reply: FastifyReply, problem: Problem) =>
      reply
        .status(problem.status)
        .header('content-type', 'application/problem+json; charset=utf-8')
        .serializer((body) => JSON.stringify(body))
        .send({ ...problem.body(request.url.split('?')[0] ?? ''), requestId: request.id });
    app.setErrorHandler((error, request, reply) => {
      const problem = toProblem(error);
      if (problem.code === 'internal') request.log.error({ err: error }, 'unforeseen error');
      return send(request, reply, problem);
    });
    app.setNotFoundHandler((request, reply) =>
      send(request, reply, new Problem('not-found', `There is no ${request.method} ${request.url.split('?')[0]}.`)),
    );
  },
  { name: 'problems' },
);
