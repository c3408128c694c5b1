import { PrismaPg } from '@prisma/adapter-pg';
import { PrismaClient } from './generated/client.ts';
import type { Database } from './pool.ts';

/** Typed reads over the connections that the app has already: same role, same limits, nothing more to close. */
export const createPrisma = (db: Database): PrismaClient => new PrismaClient({ adapter: new PrismaPg(db) });

export type { PrismaClient } from './generated/client.ts';
