import { existsSync } from 'node:fs';
import { join } from 'node:path';
import helmet from '@fastify/helmet';
import multipart from '@fastify/multipart';
import rateLimit from '@fastify/rate-limit';
import statics from '@fastify/static';
import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import Fastify, { type FastifyInstance, type FastifyReply, type FastifyRequest } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { calcRoutes } from './features/calc/routes.ts';
import { fileRoutes } from './features/files/routes.ts';
import { importRoutes } from './features/import/routes.ts';
import { jobRoutes } from './features/jobs/routes.ts';
import { operatingRoutes } from './features/operating/routes.ts';
import { readRoutes } from './features/read-routes.ts';
import { startBatchJob } from './features/recording/batch-job.ts';
import type { Clock } from './features/recording/record-command.ts';
import { recordingRoutes } from './features/recording/routes.ts';
import { recordRoutes } from './features/records/routes.ts';
import { sessionRoutes } from './features/session/routes.ts';
import { longRunRoutes } from './features/simulation/long-run-routes.ts';
import { simulationRoutes } from './features/simulation/routes.ts';
import type { Database } from './platform/database/pool.ts';
import { declaredActionsPlugin } from './platform/http/declared-actions.ts';
import { healthRoutes } from './platform/http/health.ts';
import { problemsPlugin } from './platform/http/problems.ts';
import { type LogTo, requestLogOptions, requestLogPlugin } from './platform/http/request-log.ts';
import { transformWithExamples } from './platform/http/route-examples.ts';
import { liveRoutes } from './platform/live/routes.ts';
import { metricsPlugin } from './platform/metrics/plugin.ts';
import { HeadSigner } from './platform/record-key/head-signer.ts';
import { repositoryRoot } from './platform/repository-root.ts';
import { signInPlugin } from './platform/sign-in/plugin.ts';
import type { TlsSource } from './platform/tls/tls-source.ts';
import { trustRoutes } from './platform/tls/trust-page/trust-routes.ts';

export interface AppParts {
  readonly db: Database;
  readonly version: string;
  /** the clock of the command path; history that is loaded brings its own */
  readonly clock: Clock;
  /** what health and the operator should know, such as an all-powerful database role */
  readonly warnings: readonly string[];
  /** aborted as soon as the process is to stop */
  readonly stopping?: AbortSignal;
  /** what signs heads of the record; nothing does unless given */
  readonly signer?: HeadSigner;
  /** how it is reached from outside; plain http without a proxy unless given */
  readonly serving?: Serving;
  /** where requests are logged; standard error unless given */
  readonly log?: LogTo;
  /** what opens `/metrics`; without it there are none */
  readonly metricsToken?: string | undefined;
}

export interface Serving {
  readonly tls?: TlsSource | undefined;
  /** addresses and subnets of proxies whose forwarded headers count */
  readonly trustProxy: readonly string[];
  /** how long browsers are to insist on https; 0: not at all */
  readonly hstsDays: number;
  readonly logLevel: string;
}

const SECONDS_A_DAY = 86_400;

const BODY_LIMIT = 1024 * 1024;

/** First parts of the web app's addresses; what is none of them is not found. */
const PAGES = [
  '/sign-in',
  '/first-visit',
  '/shutdowns',
  '/shutdowns/*',
  '/site/*',
  '/calculate',
  '/calculate/*',
  '/me',
];

/** Builds the HTTP server without starting it. */
export async function createApp(parts: AppParts): Promise<FastifyInstance> {
  const { tls, trustProxy = [], hstsDays = 0, logLevel = 'warn' }: Partial<Serving> = parts.serving ?? {};
  const app = Fastify({
    ...requestLogOptions(parts.log ?? { level: logLevel, stream: process.stderr }),
    bodyLimit: BODY_LIMIT,
    trustProxy: trustProxy.length > 0 ? [...trustProxy] : false,
    routerOptions: { maxParamLength: 200 },
    ...(tls ? { serverFactory: tls.createServer } : {}),
  });
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  await app.register(problemsPlugin);
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'blob:', 'data:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'"],
        manifestSrc: ["'self'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity:
      hstsDays > 0 ? { maxAge: hstsDays * SECONDS_A_DAY, includeSubDomains: false, preload: false } : false,
    crossOriginEmbedderPolicy: false,
  });
  await app.register(signInPlugin, { db: parts.db });
  await app.register(requestLogPlugin);
  await app.register(metricsPlugin, { db: parts.db, token: parts.metricsToken });
  await app.register(rateLimit, { global: false });
  await app.register(multipart);
  await app.register(declaredActionsPlugin);
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Seatwell',
        version: parts.version,
        description:
          'Joint-integrity management across a plant shutdown. Lengths mm, forces N, stresses and pressures MPa, torque N·m, temperature °C.',
      },
    },
    transform: transformWithExamples,
  });
  await app.register(swaggerUi, { routePrefix: '/api-page', staticCSP: false });
  await app.register(async (api) => {
    const signer = parts.signer ?? new HeadSigner(parts.db, undefined, parts.clock);
    await healthRoutes(api, { ...parts, signer });
    await sessionRoutes(api, parts);
    await recordingRoutes(api, { parts, startBatchJob: startBatchJob(parts) });
    await readRoutes(api, parts);
    await fileRoutes(api, parts);
    await jobRoutes(api, parts);
    await operatingRoutes(api, { ...parts, signer });
    await recordRoutes(api, { ...parts, signer });
    await importRoutes(api, parts);
    await liveRoutes(api, parts);
    await api.register(calcRoutes);
    await api.register(simulationRoutes);
    await longRunRoutes(api, parts);
  });
  if (tls?.authority) await trustRoutes(app, tls.authority);
  await serveWeb(app);
  return app;
}

/** The built web app; every other address of a page is its index, since the app routes itself. */
async function serveWeb(app: FastifyInstance): Promise<void> {
  const root = join(repositoryRoot(), 'apps', 'web', 'dist');
  if (!existsSync(root)) return;
  await app.register(statics, {
    root,
    wildcard: false,
    index: false,
    immutable: true,
    maxAge: '30d',
    globIgnore: ['service-worker.js'],
  });
  const page = (_request: FastifyRequest, reply: FastifyReply) =>
    reply.sendFile('index.html', { maxAge: 0, immutable: false });
  // Its name stays the same from build to build: browsers look at it anew each time.
  app.get('/service-worker.js', (_request, reply) =>
    reply.sendFile('service-worker.js', { maxAge: 0, immutable: false }),
  );
  app.get('/', page);
  for (const path of PAGES) app.get(path, page);
}
