import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { zipOf } from '../../apps/server/src/features/import/reading/zip-for-tests.ts';
import { sampleRegister } from '../browser/support/sample-register.ts';
import { csv, HEADERS, holdings, importing } from './support/importing.ts';
import { accepted, command } from './support/plant.ts';
import { openShutdown, type Shutdown } from './support/shutdown.ts';

let shutdown: Shutdown;
let register: ReturnType<typeof importing>;
beforeAll(async () => {
  shutdown = await openShutdown();
  register = importing(shutdown);
});
afterAll(() => shutdown.close());

describe('a file that is no register', () => {
  const refusedWith = async (bytes: Uint8Array, name: string): Promise<string> => {
    const before = await holdings(shutdown);
    const response = await register.upload(bytes, name);
    expect(response.status).toBe(422);
    expect(response.headers['content-type']).toContain('application/problem+json');
    expect(response.body.type).toBe('urn:seatwell:problem:file-refused');
    expect(response.body.detail.length).toBeGreaterThan(20);
    expect(await holdings(shutdown)).toEqual(before);
    return response.body.errors[0].code;
  };

  it('with 0 bytes is refused', async () => {
    expect(await refusedWith(Buffer.alloc(0), 'empty.xlsx')).toBe('file-empty');
  });
  it('that is another kind of file is refused, whatever its name says', async () => {
    expect(await refusedWith(Buffer.from('%PDF-1.7 nothing'), 'register.xlsx')).toBe('not-a-spreadsheet');
  });
  it('that is a damaged workbook is refused', async () => {
    const { bytes } = await sampleRegister();
    expect(await refusedWith(bytes.slice(0, bytes.length / 2), 'half.xlsx')).toBe('damaged');
  });
  it('that would unpack to a flood is refused', async () => {
    const flood = zipOf([
      { name: '[Content_Types].xml', content: '<Types/>' },
      { name: 'xl/worksheets/sheet1.xml', content: Buffer.alloc(60_000_000, 'x') },
    ]);
    expect(await refusedWith(flood, 'bomb.xlsx')).toBe('bomb-like');
  });
  it('of 100 MB is refused', async () => {
    expect(await refusedWith(Buffer.alloc(100 * 1024 * 1024, 'a,b\n'), 'huge.csv')).toBe('file-too-large');
  });
});

describe('who may import', () => {
  it('a role without the action may not, nor see a draft', async () => {
    const draft = await register.draft(csv(HEADERS, 'W-1,U41,8",150,SWG,C,'), 'register.csv');
    const { technician } = shutdown;
    expect((await register.upload(csv(HEADERS), 'x.csv', technician)).status).toBe(403);
    expect((await technician.agent.get(`${register.base}/${draft.importId}`)).status).toBe(403);
    expect((await register.choose(draft.importId, { sheet: 'x' }, technician)).status).toBe(403);
    const confirmation = { importId: draft.importId, previewId: uuidv7() };
    expect((await register.confirm(confirmation, {}, technician)).status).toBe(403);
    expect((await technician.agent.get(`${register.base}/sample`)).status).toBe(403);
  });

  it('an engineer may import, but not create areas by it', async () => {
    const preview = await register.previewed(csv(HEADERS, 'W-2,Brand new area,8",150,SWG,C,'));
    expect((await register.confirm(preview, {}, shutdown.engineer)).status).toBe(403);
  });

  it('the draft of one shutdown is unknown in another', async () => {
    const draft = await register.draft(csv(HEADERS, 'W-3,U41,8",150,SWG,C,'), 'register.csv');
    const other = uuidv7();
    accepted(
      await command(shutdown.plant, shutdown.coordinator, other, 'shutdown-opened', other, {
        name: 'Autumn',
        timeZone: 'Europe/Oslo',
        startsOn: '2027-09-01',
        endsOn: '2027-09-28',
        shifts: [{ name: 'day', starts: '06:00', ends: '18:00' }],
        units: 'SI',
        areaBasis: 'tensile',
      }),
    );
    const elsewhere = importing({ ...shutdown, shutdownId: other });
    expect((await elsewhere.choose(draft.importId, { sheet: draft.sheets[0]?.name ?? '' })).status).toBe(404);
    const response = await shutdown.coordinator.agent.get(`${elsewhere.base}/${draft.importId}`);
    expect(response.status).toBe(404);
    expect((await elsewhere.confirm({ importId: draft.importId, previewId: uuidv7() })).status).toBe(404);
  });

  it('the sample can be downloaded and read back', async () => {
    const response = await shutdown.coordinator.agent.get(`${register.base}/sample`);
    expect(response.headers['content-type']).toContain('text/csv');
    const preview = await register.previewed(Buffer.from(response.text), { newCrewCompany: 'Contractor' });
    expect(preview.counts.error).toBe(0);
    expect(preview.columns.every((column) => column.field !== null)).toBe(true);
  });
});
