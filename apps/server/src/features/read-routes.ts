import type { FastifyInstance } from 'fastify';
import type { Database } from '../platform/database/pool.ts';
import { createPrisma } from '../platform/database/prisma.ts';
import { areaRoutes } from './areas/routes.ts';
import { blindRoutes } from './blinds/routes.ts';
import { jointRoutes } from './joints/routes.ts';
import { packRoutes } from './packs/routes.ts';
import { paperRoutes } from './paper/routes.ts';
import { sheetRoutes } from './paper/sheet-routes.ts';
import { peopleRoutes } from './people/routes.ts';
import { permitRoutes } from './permits/routes.ts';
import { procedureRoutes } from './procedures/routes.ts';
import { punchItemRoutes } from './punch-items/routes.ts';
import type { Clock } from './recording/record-command.ts';
import { reviewRoutes } from './reviews/routes.ts';
import { shutdownRoutes } from './shutdowns/routes.ts';
import { systemRoutes } from './systems/routes.ts';
import { talkRoutes } from './talks/routes.ts';
import { todayRoutes } from './today/routes.ts';
import { toolRoutes } from './tools/routes.ts';

/** Every read of the product: what lists, pages and forms show. */
export async function readRoutes(
  api: FastifyInstance,
  { db, clock }: { readonly db: Database; readonly clock: Clock },
): Promise<void> {
  const parts = { db, clock, prisma: createPrisma(db) };
  const features = [
    shutdownRoutes,
    todayRoutes,
    areaRoutes,
    jointRoutes,
    packRoutes,
    systemRoutes,
    blindRoutes,
    permitRoutes,
    talkRoutes,
    punchItemRoutes,
    reviewRoutes,
    peopleRoutes,
    toolRoutes,
    procedureRoutes,
    sheetRoutes,
    paperRoutes,
  ];
  for (const routes of features) await routes(api, parts);
}
