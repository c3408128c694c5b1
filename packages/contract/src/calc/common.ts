import { z } from 'zod';

/** An array that handlers may answer with read-only data. */
export const list = <T extends z.ZodType>(item: T) => z.array(item).readonly();

export const calcWarning = z.object({ code: z.string(), message: z.string() });

export const calcWorkingStep = z.object({
  symbol: z.string(),
  meaning: z.string(),
  formula: z.string(),
  substituted: z.string(),
  value: z.number(),
  unit: z.string(),
  source: z.string(),
});

/** Carried by every response; `working` only when the request asked for it. */
export const calcExplained = {
  warnings: list(calcWarning),
  working: list(calcWorkingStep).exactOptional(),
};

/** Accepted by every request. */
export const calcExplainable = { working: z.boolean().exactOptional() };

/** Body of a refusal (RFC 9457), status 422. */
export const calcRefusalBody = z.object({
  type: z.string(),
  title: z.string(),
  detail: z.string(),
  errors: list(
    z.object({
      path: z.string(),
      code: z.string(),
      message: z.string(),
      limit: z.union([z.number(), z.string()]).exactOptional(),
    }),
  ),
});

export const calcArea = z.enum(['tensile', 'root']);
