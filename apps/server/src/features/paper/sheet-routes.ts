import { id } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { uuidv7 } from 'uuidv7';
import { z } from 'zod';
import { Problem } from '../../platform/errors/problem.ts';
import { startJob } from '../../platform/jobs/queue.ts';
import { requireActor } from '../../platform/sign-in/plugin.ts';
import { inShutdown, type ReadParts, reading, siteReading } from '../reading/reading.ts';
import { handOutPdf } from './hand-out/hand-out-pdf.ts';
import { loadHandOut } from './hand-out/load-hand-out.ts';
import { chosenPump } from './joint-sheet/chosen-pump.ts';
import { loadPhotos, loadSheetSources } from './joint-sheet/load-sources.ts';
import { sheetContent } from './joint-sheet/sheet-content.ts';
import { PAPERS_OF_JOINTS, SHEETS_JOB, type SheetsJobInput } from './joint-sheet/sheets-job.ts';
import { sheetsPdf } from './joint-sheet/sheets-pdf.ts';
import { choiceFor, inLanguage, originOf, pdfHeaders, printing } from './paper-reply.ts';
import { CARDS, tagGeometry, tagSize } from './tags/tag-geometry.ts';

const MOST_SHEETS = 2000;
const tags = ['Paper'];
const config = printing;

/** Paper: the sheet of a joint, papers of a selection as a job, and the hand-out of a procedure. */
export async function sheetRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();

  app.get(
    '/api/v1/shutdowns/:shutdownId/joints/:jointId/sheet.pdf',
    {
      schema: {
        tags,
        summary: 'the joint sheet; of another make, or with pump pressures of a tool on a gauge, where named',
        params: inShutdown.extend({ jointId: id }),
        querystring: inLanguage.extend({ makeId: id.optional(), toolId: id.optional(), gaugeId: id.optional() }),
      },
      config,
    },
    async (request, reply) => {
      const read = await reading(parts, request, request.params);
      const { makeId, toolId, gaugeId } = request.query;
      if ((toolId === undefined) !== (gaugeId === undefined))
        throw new Problem('bad-input', 'Pump pressures need both the tool and the gauge that is read. Name both.');
      const { language, units } = await choiceFor(read.db, request, request.query.language);
      const pump = toolId && gaugeId ? await chosenPump(read, toolId, gaugeId) : null;
      const order = { origin: originOf(request), makeId, pump };
      const sources = await loadSheetSources(read, [request.params.jointId], order);
      const photos = await loadPhotos(read, sources);
      const { bytes } = await sheetsPdf(
        sources.map((source) => sheetContent(source, language, units)),
        photos,
      );
      return reply.headers(pdfHeaders(sources[0]?.joint.tag ?? 'sheet')).send(bytes);
    },
  );

  app.post(
    '/api/v1/shutdowns/:shutdownId/sheets',
    {
      schema: {
        tags,
        summary: 'print sheets, tags or record forms of a selection in the order given; the job answers the file',
        params: inShutdown,
        body: z.strictObject({
          jointIds: z.array(id).min(1).max(MOST_SHEETS),
          paper: z.enum(PAPERS_OF_JOINTS).default('sheet'),
          language: inLanguage.shape.language,
          /** how tags lie on their sheet; absent = four cards with stubs */
          geometry: tagGeometry.optional(),
        }),
        response: { 202: z.object({ jobId: id }) },
      },
      config,
    },
    async (request, reply) => {
      const { siteId, shutdownId, now, db } = await reading(parts, request, request.params);
      const { paper, geometry = CARDS } = request.body;
      tagSize(geometry);
      const jointIds = [...new Set(request.body.jointIds)];
      const { rows } = await db.query<{ unknown: string }>(
        `SELECT wanted AS unknown FROM unnest($3::uuid[]) AS wanted WHERE NOT EXISTS (
           SELECT FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = wanted) LIMIT 50`,
        [siteId, shutdownId, jointIds],
      );
      if (rows[0]) throw new Problem('not-found', `This shutdown has no joint ${rows[0].unknown}.`);
      const { language, units } = await choiceFor(db, request, request.body.language);
      const origin = originOf(request);
      const input: SheetsJobInput = { shutdownId, jointIds, origin, askedAt: now, paper, language, units, geometry };
      const jobId = await startJob(db, {
        siteId,
        jobId: uuidv7(),
        shutdownId,
        kind: SHEETS_JOB,
        total: jointIds.length,
        input,
        startedBy: requireActor(request).accountId,
      });
      return reply.status(202).send({ jobId });
    },
  );

  app.get(
    '/api/v1/procedures/:procedureId/revisions/:revision/hand-out.pdf',
    {
      schema: {
        tags,
        summary: 'the hand-out of the pre-job talk; drawn for the bolt count named',
        params: z.object({ procedureId: id, revision: z.coerce.number().int().min(1) }),
        querystring: inLanguage.extend({ bolts: z.coerce.number().int().min(4).max(200).optional() }),
      },
      config,
    },
    async (request, reply) => {
      const site = siteReading(parts, request);
      const { language } = await choiceFor(site.db, request, request.query.language);
      const source = await loadHandOut(site, request.params, request.query.bolts);
      const { bytes } = await handOutPdf(source, language);
      return reply.headers(pdfHeaders(`${source.procedure.code}-${source.procedure.revision}`)).send(bytes);
    },
  );
}
