import { id } from '@seatwell/contract';
import type { FastifyInstance } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { inShutdown, type ReadParts, reading } from '../reading/reading.ts';
import { handOverPdf } from './hand-over-list/hand-over-pdf.ts';
import { loadHandOver } from './hand-over-list/load-hand-over.ts';
import { loadSheetSources } from './joint-sheet/load-sources.ts';
import { choiceFor, inLanguage, originOf, pdfHeaders, printing } from './paper-reply.ts';
import { formContent } from './record-form/form-content.ts';
import { formsPdf } from './record-form/forms-pdf.ts';
import { loadReport } from './report/load-report.ts';
import { reportPdf } from './report/report-pdf.ts';
import { tagContent } from './tags/tag-content.ts';
import { CARDS } from './tags/tag-geometry.ts';
import { tagsPdf } from './tags/tags-pdf.ts';
import { loadTestSheet } from './test-sheet/load-test-sheet.ts';
import { testSheetPdf } from './test-sheet/test-sheet-pdf.ts';

const tags = ['Paper'];
const config = printing;
const ofJoint = inShutdown.extend({ jointId: id });
const ofMake = inLanguage.extend({ makeId: id.optional() });

/** Paper of one joint, pack, system, and of the shutdown as a whole. */
export async function paperRoutes(instance: FastifyInstance, parts: ReadParts): Promise<void> {
  const app = instance.withTypeProvider<ZodTypeProvider>();
  const base = '/api/v1/shutdowns/:shutdownId';

  app.get(
    `${base}/joints/:jointId/tag.pdf`,
    { schema: { tags, summary: 'the tag with stubs', params: ofJoint, querystring: ofMake }, config },
    async (request, reply) => {
      const read = await reading(parts, request, request.params);
      const { language, units } = await choiceFor(read.db, request, request.query.language);
      const order = { origin: originOf(request), makeId: request.query.makeId };
      const sources = await loadSheetSources(read, [request.params.jointId], order);
      const { bytes } = await tagsPdf(
        sources.map((source) => tagContent(source, language, units)),
        CARDS,
        language,
      );
      return reply.headers(pdfHeaders(`${sources[0]?.joint.tag}-tag`)).send(bytes);
    },
  );

  app.get(
    `${base}/joints/:jointId/record-form.pdf`,
    {
      schema: { tags, summary: 'the form for work without power', params: ofJoint, querystring: ofMake },
      config,
    },
    async (request, reply) => {
      const read = await reading(parts, request, request.params);
      const { language, units } = await choiceFor(read.db, request, request.query.language);
      const order = { origin: originOf(request), makeId: request.query.makeId };
      const sources = await loadSheetSources(read, [request.params.jointId], order);
      const { bytes } = await formsPdf(
        sources.map((source) => formContent(source, language, units)),
        language,
        units,
      );
      return reply.headers(pdfHeaders(`${sources[0]?.joint.tag}-form`)).send(bytes);
    },
  );

  app.get(
    `${base}/packs/:packId/test-sheet.pdf`,
    {
      schema: {
        tags,
        summary: 'the sheet of a test pack; with the exclusion distance where the volume of gas is given',
        params: inShutdown.extend({ packId: id }),
        querystring: inLanguage.extend({ volume_m3: z.coerce.number().positive().max(1e6).optional() }),
      },
      config,
    },
    async (request, reply) => {
      const read = await reading(parts, request, request.params);
      const { language, units } = await choiceFor(read.db, request, request.query.language);
      const volume_m3 = request.query.volume_m3 ?? null;
      const source = await loadTestSheet(read, request.params.packId, { origin: originOf(request), volume_m3 });
      const { bytes } = await testSheetPdf(source, language, units);
      return reply.headers(pdfHeaders(source.pack.number)).send(bytes);
    },
  );

  app.get(
    `${base}/systems/:systemId/hand-over-list.pdf`,
    {
      schema: {
        tags,
        summary: 'the hand-over list of a system',
        params: inShutdown.extend({ systemId: id }),
        querystring: inLanguage,
      },
      config,
    },
    async (request, reply) => {
      const read = await reading(parts, request, request.params);
      const { language } = await choiceFor(read.db, request, request.query.language);
      const source = await loadHandOver(read, request.params.systemId, originOf(request));
      const { bytes } = await handOverPdf(source, language);
      return reply.headers(pdfHeaders(source.system.code)).send(bytes);
    },
  );

  app.get(
    `${base}/report.pdf`,
    { schema: { tags, summary: 'progress on one page', params: inShutdown, querystring: inLanguage }, config },
    async (request, reply) => {
      const read = await reading(parts, request, request.params);
      const { language } = await choiceFor(read.db, request, request.query.language);
      const { bytes } = await reportPdf(await loadReport(read, originOf(request)), language);
      return reply.headers(pdfHeaders('report')).send(bytes);
    },
  );
}
