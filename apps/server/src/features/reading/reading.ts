import { id } from '@seatwell/contract';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { Database } from '../../platform/database/pool.ts';
import type { PrismaClient } from '../../platform/database/prisma.ts';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import type { Clock } from '../recording/record-command.ts';
import { loadShutdown, type ShutdownRow } from '../shutdowns/load-shutdown.ts';

export interface ReadParts {
  readonly db: Database;
  readonly prisma: PrismaClient;
  readonly clock: Clock;
}

/** A read of the site: who asks, and when. */
export interface SiteReading {
  readonly db: Database;
  readonly prisma: PrismaClient;
  readonly actor: Actor;
  readonly siteId: string;
  /** ISO instant: what is due, is due at this moment */
  readonly now: string;
}

/** A read of one shutdown. */
export interface Reading extends SiteReading {
  readonly shutdown: ShutdownRow;
  readonly shutdownId: string;
}

export const inShutdown = z.object({ shutdownId: id });

/** Actions that reads take, as routes declare them. */
export const anyoneReads = { action: 'read-register' } as const;
export const recordsReads = { action: 'read-records' } as const;

export function siteReading(parts: ReadParts, request: FastifyRequest): SiteReading {
  const actor = requireActor(request);
  const { db, prisma } = parts;
  return { db, prisma, actor, siteId: actor.siteId, now: parts.clock().toISOString() };
}

/** @throws Problem `not-found` when the caller's site has no such shutdown */
export async function reading(
  parts: ReadParts,
  request: FastifyRequest,
  { shutdownId }: { readonly shutdownId: string },
): Promise<Reading> {
  const site = siteReading(parts, request);
  return { ...site, shutdown: await loadShutdown(parts.db, site.siteId, shutdownId), shutdownId };
}
