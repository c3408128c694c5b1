import { inflateSync } from 'node:zlib';
import sharp from 'sharp';
import { expect } from 'vitest';
import type { SignedIn } from './plant.ts';
import type { Shutdown } from './shutdown.ts';

/** A PDF of the server. @throws Error with what it answered instead */
export async function pdfAt(path: string, who: SignedIn): Promise<Buffer> {
  const response = await who.agent.get(path).responseType('blob');
  if (response.status !== 200) throw new Error(`${path} answered ${response.status}: ${String(response.body)}`);
  expect(response.headers['content-type']).toBe('application/pdf');
  return response.body as Buffer;
}

/** Stores a photo as a phone would send it; answers its hash. */
export async function storePhoto(who: SignedIn, background = '#777777'): Promise<string> {
  const photo = await sharp({ create: { width: 80, height: 60, channels: 3, background } })
    .jpeg()
    .toBuffer();
  const { body } = await who.agent.post('/api/v1/files').attach('file', photo, 'photo.jpg').expect(200);
  return body.hash;
}

export interface PrintedFile {
  readonly hash: string;
  readonly pages: number;
  readonly sheets: number;
}

/** Prints papers of a selection, and waits for the job. */
export async function printSelection(
  { shutdownId }: Shutdown,
  who: SignedIn,
  order: { readonly jointIds: readonly string[]; readonly paper?: string; readonly geometry?: object },
): Promise<PrintedFile> {
  const { body: started } = await who.agent.post(`/api/v1/shutdowns/${shutdownId}/sheets`).send(order).expect(202);
  for (;;) {
    const { body } = await who.agent.get(`/api/v1/jobs/${started.jobId}`).expect(200);
    if (body.state === 'done') return body.result.file;
    if (body.state === 'failed') throw new Error(JSON.stringify(body.result));
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

/** How many pictures a PDF holds. */
export const picturesIn = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Subtype \/Image/g)?.length ?? 0;

/** Colours that a PDF paints with, grey ones left out: settings of a colour by its three parts. */
export function coloursIn(pdf: Buffer): string[] {
  const colours: string[] = [];
  for (const [, stream] of pdf.toString('latin1').matchAll(/stream\n([\s\S]*?)\nendstream/g)) {
    let content: string;
    try {
      content = inflateSync(Buffer.from(stream ?? '', 'latin1')).toString('latin1');
    } catch {
      // A photo is not compressed this way; it is no paint.
      continue;
    }
    for (const [, three] of content.matchAll(/(?:^|\n)([\d.]+ [\d.]+ [\d.]+) (?:rg|RG|scn|SCN|sc|SC)(?=\n)/g))
      if (new Set(three?.split(' ')).size > 1) colours.push(three ?? '');
  }
  return colours;
}
