import { language } from '@seatwell/contract';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { Database } from '../../platform/database/pool.ts';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import { type PaperLanguage, paperLanguage } from './texts/sheet-texts.ts';

/** The action that every paper takes. */
export const printing = { action: 'print-sheets' } as const;

export const inLanguage = z.object({ language: language.optional() });

/** Protocol and host under which the screens are found. */
export const originOf = (request: FastifyRequest): string => `${request.protocol}://${request.host}`;

/** A file name that every system takes. */
const fileName = (text: string): string => `${text.replaceAll(/[^\w.-]+/g, '_')}.pdf`;

export const pdfHeaders = (name: string) => ({
  'content-type': 'application/pdf',
  'content-disposition': `inline; filename="${fileName(name)}"`,
  // It shows things as they stand: never an older one from a cache.
  'cache-control': 'private, no-store',
});

/** The language asked for, else the one that the user has chosen on the screen, else English. */
export async function languageFor(
  db: Database,
  request: FastifyRequest,
  asked: PaperLanguage | undefined,
): Promise<PaperLanguage> {
  if (asked) return paperLanguage(asked);
  const { siteId, accountId } = requireActor(request);
  const { rows } = await db.query<{ language: string | null }>({
    name: 'paper-language',
    text: `SELECT preferences->>'language' AS language FROM account WHERE site_id = $1 AND account_id = $2`,
    values: [siteId, accountId],
  });
  return paperLanguage(rows[0]?.language);
}
