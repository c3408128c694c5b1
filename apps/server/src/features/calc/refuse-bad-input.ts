import { CalcRefusal } from '@seatwell/calc';
import type { FastifyInstance } from 'fastify';
import type { z } from 'zod';

/** Input that the schema refuses answers like input that the calculation refuses: all at once, with paths. */
function refusalOf(error: z.ZodError): CalcRefusal {
  return new CalcRefusal(
    error.issues.map((issue) => {
      const path = issue.path.join('.');
      return { path, code: `schema-${issue.code}`, message: `${path || 'The request'}: ${issue.message}.` };
    }),
  );
}

/** Makes schema failures of the calculation's routes refusals (422) instead of unreadable requests (400). */
export function refuseBadInput(app: FastifyInstance): void {
  app.setValidatorCompiler<z.ZodType>(({ schema }) => (data) => {
    const read = schema.safeParse(data);
    return read.success ? { value: read.data } : { error: refusalOf(read.error) };
  });
}
