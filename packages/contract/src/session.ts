import { z } from 'zod';
import { reach } from './events/site-events.ts';
import { language } from './language-schema.ts';
import { id, line, role } from './primitives.ts';

export const secret = z.string().min(12, 'Use at least 12 characters.').max(200);

export const signIn = z.strictObject({
  email: z.email().max(200),
  password: z.string().min(1).max(200),
});

/** The first visit of an empty installation: the site and its administrator. */
export const firstVisit = z.strictObject({
  siteName: line,
  timeZone: line,
  units: z.enum(['SI', 'US']),
  administrator: z.strictObject({
    name: line,
    company: line,
    email: z.email().max(200),
    password: secret,
  }),
});

export const preferences = z.strictObject({
  units: z.enum(['SI', 'US']).optional(),
  theme: z.enum(['light', 'dark', 'bright', 'device']).optional(),
  gloves: z.boolean().optional(),
  language: language.optional(),
});
export type Preferences = z.infer<typeof preferences>;

export const me = z.object({
  accountId: id,
  personId: id,
  name: z.string(),
  company: z.string(),
  email: z.string(),
  site: z.object({
    siteId: id,
    name: z.string(),
    timeZone: z.string(),
    units: z.enum(['SI', 'US']),
  }),
  grants: z.array(z.object({ grantId: id, role, reach })),
  /** actions that some reach of the caller's roles allows */
  actions: z.array(z.string()),
  preferences,
  shutdowns: z.array(
    z.object({
      shutdownId: id,
      name: z.string(),
      startsOn: z.string(),
      endsOn: z.string(),
      timeZone: z.string(),
    }),
  ),
});
export type Me = z.infer<typeof me>;
