import { language } from '@seatwell/contract';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { Database } from '../../platform/database/pool.ts';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import type { PaperUnits } from './paper-figures.ts';
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

/** In which language and units somebody prints. */
export interface PaperChoice {
  readonly language: PaperLanguage;
  readonly units: PaperUnits;
}

/**
 * The language asked for, else the one that the user has chosen on the screen, else English; and the units that the
 * user sees on the screen, else those of the site.
 */
export async function choiceFor(
  db: Database,
  request: FastifyRequest,
  asked: PaperLanguage | undefined,
): Promise<PaperChoice> {
  const { siteId, accountId } = requireActor(request);
  const { rows } = await db.query<{ language: string | null; units: PaperUnits }>({
    name: 'paper-choice',
    text: `SELECT a.preferences->>'language' AS language, coalesce(a.preferences->>'units', s.units) AS units
           FROM account a JOIN site s ON s.site_id = a.site_id WHERE a.site_id = $1 AND a.account_id = $2`,
    values: [siteId, accountId],
  });
  return { language: paperLanguage(asked ?? rows[0]?.language), units: rows[0]?.units ?? 'SI' };
}
