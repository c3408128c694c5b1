import { execFile } from 'node:child_process';
import { createPublicKey, generateKeyPairSync, type KeyObject } from 'node:crypto';
import { chmodSync, copyFileSync, existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { OperatorStatus, RecordHead, RecordKeys } from '@seatwell/contract';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkSignedHead, fingerprintOf } from '../../apps/server/record-verifier.mjs';
import { changeKey } from '../../apps/server/src/platform/record-key/change-key.ts';
import { HeadSigner } from '../../apps/server/src/platform/record-key/head-signer.ts';
import { keyFileOf, makeKeyFile, readKeyFile } from '../../apps/server/src/platform/record-key/key-file.ts';
import { repositoryRoot } from '../../apps/server/src/platform/repository-root.ts';
import { listJoint, openShutdown, type Shutdown } from './support/shutdown.ts';

let shutdown: Shutdown;
let folder: string;
let base: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'seatwell-heads-'));
  shutdown = await openShutdown();
  base = `/api/v1/shutdowns/${shutdown.shutdownId}`;
  await listJoint(shutdown);
});
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  await shutdown.close();
});

const asked = async (path: string): Promise<string> =>
  ((await shutdown.witness.agent.get(path).responseType('blob').expect(200)).body as Buffer).toString('utf8');
const signedHead = () => asked(`${base}/record/signed-head`);
const wholeRecord = () => asked(`${base}/record`);
const head = async (): Promise<RecordHead> =>
  (await shutdown.witness.agent.get(`${base}/record/head`).expect(200)).body;
const keys = async (): Promise<RecordKeys> =>
  (await shutdown.witness.agent.get('/api/v1/record-keys').expect(200)).body;
const publicKey = async (): Promise<KeyObject> => createPublicKey(await asked('/api/v1/record-keys/public.pem'));

const kept = (name: string, content: string): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};
const someKey = (name: string): string => {
  const path = join(folder, name);
  makeKeyFile({ path, given: false }, 'replace');
  return path;
};
const pem = (key: KeyObject) => key.export({ format: 'pem', type: 'spki' }) as string;

/** The verifier as a client’s witness runs it. */
const run = (...words: readonly string[]) =>
  new Promise<{ code: number; output: string }>((resolve) => {
    const program = join(repositoryRoot(), 'apps', 'server', 'record-verifier.mjs');
    execFile(process.execPath, [program, ...words], (error, output, complaints) =>
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, output: output + complaints }),
    );
  });

describe('the head of a record', () => {
  it('is signed by the installation’s own key, which only its user can read', async () => {
    const key = await publicKey();
    expect(statSync(shutdown.plant.recordKey.path).mode & 0o777).toBe(0o600);
    expect(fingerprintOf(key)).toBe(readKeyFile(shutdown.plant.recordKey)?.fingerprint);
    const { sequence, root, signed, fingerprint, unsigned } = await head();
    expect({ fingerprint, unsigned }).toEqual({ fingerprint: fingerprintOf(key), unsigned: null });
    const checked = checkSignedHead(signed ?? '', [key]);
    const siteId = (await shutdown.plant.db.query('SELECT site_id FROM site')).rows[0].site_id;
    expect(checked).toEqual({
      origin: `seatwell/record/${siteId}/${shutdown.shutdownId}`,
      siteId,
      streamId: shutdown.shutdownId,
      sequence,
      root,
      time: shutdown.plant.now.toISOString(),
      signer: fingerprintOf(key),
    });
  });

  it('stands in the operator’s page with the key’s fingerprint, and the site’s record has one too', async () => {
    const { agent } = shutdown.plant.administrator;
    const { body }: { body: OperatorStatus } = await agent.get('/api/v1/operator/status').expect(200);
    const key = await publicKey();
    expect(body.signing).toEqual({ fingerprint: fingerprintOf(key), unsigned: null });
    const { text, headers } = await agent.get('/api/v1/site/record/signed-head').expect(200);
    const site = body.streams.find(({ kind }) => kind === 'site');
    expect(checkSignedHead(text, [key])).toMatchObject({ sequence: site?.sequence, root: site?.root });
    expect(headers['content-disposition']).toMatch(/^attachment; filename="head-.*\.txt"$/);
    await shutdown.witness.agent.get('/api/v1/site/record/signed-head').expect(403);
  });

  it('is described in the API’s document as the text that it is', async () => {
    const { paths } = (await shutdown.witness.agent.get('/api/v1/openapi.json').expect(200)).body;
    for (const [path, type] of [
      ['/api/v1/shutdowns/{shutdownId}/record/signed-head', 'text/plain'],
      ['/api/v1/site/record/signed-head', 'text/plain'],
      ['/api/v1/record-keys/public.pem', 'application/x-pem-file'],
    ] as const)
      expect(Object.keys(paths[path].get.responses['200'].content), path).toEqual([type]);
    const fields = paths['/api/v1/shutdowns/{shutdownId}/record/head'].get.responses['200'].content['application/json'];
    expect(Object.keys(fields.schema.properties)).toEqual(Object.keys(await head()));
  });

  it('is refused once any byte of it is changed', async () => {
    const note = await signedHead();
    const key = await publicKey();
    expect(checkSignedHead(note, [key])).not.toHaveProperty('wrong');
    // Padding bits of base64 aside, which carry nothing: the last four characters of the signature line.
    for (let at = 0; at < note.length - 4; at += 1) {
      const other = note[at] === '1' ? '2' : '1';
      const changed = checkSignedHead(note.slice(0, at) + other + note.slice(at + 1), [key]);
      expect(changed.wrong, `byte ${at} of ${note}`).toBeTypeOf('string');
    }
  });

  it('keeps its signature when a witness’s program adds one of its own', async () => {
    const cosigned = `${await signedHead()}— witness.example/one ${Buffer.alloc(68, 7).toString('base64')}\n`;
    expect(checkSignedHead(cosigned, [await publicKey()])).not.toHaveProperty('wrong');
  });
});

describe('a witness who kept a signed head', () => {
  it('finds that the record goes on from it, with the key as a file or as its fingerprint', async () => {
    const early = kept('early.txt', await signedHead());
    await listJoint(shutdown);
    const record = kept('record.jsonl', await wholeRecord());
    const key = await publicKey();
    const { sequence } = await head();
    for (const told of [
      kept('public.pem', pem(key)),
      fingerprintOf(key),
      fingerprintOf(key).replaceAll(':', '').toLowerCase(),
    ]) {
      const { code, output } = await run(record, '--signed-head', early, '--key', told);
      expect({ code, output }).toMatchObject({ code: 0 });
      expect(output).toMatch(new RegExp(`^${sequence} events give the head .* Nothing is wrong`));
      expect(output).toContain('It goes on from the head of ');
      expect(output).toContain(`by ${fingerprintOf(key)}`);
    }
  });

  it('finds that a record was written anew, though its own head is right', async () => {
    const lines = (await wholeRecord()).trimEnd().split('\n');
    const { sequence, root } = await head();
    const record = kept('shorter.jsonl', await wholeRecord());
    // The head of another history of the same length, signed by the true key.
    const signer = new HeadSigner(shutdown.plant.db, shutdown.plant.recordKey, () => shutdown.plant.now);
    const stream = JSON.parse(lines[0] ?? '') as { siteId: string; streamId: string };
    const other = await signer.sign({
      ...stream,
      sequence,
      root: `${root.slice(0, -2)}${root.endsWith('00') ? '11' : '00'}`,
    });
    const longer = await signer.sign({ ...stream, sequence: sequence + 1, root });
    const key = fingerprintOf(await publicKey());
    const rewritten = await run(record, '--signed-head', kept('other.txt', other.signed ?? ''), '--key', key);
    expect(rewritten.code).toBe(1);
    expect(rewritten.output).toMatch(/^Up to event \d+ the record gives .*, and the head kept is /);
    const cut = await run(record, '--signed-head', kept('longer.txt', longer.signed ?? ''), '--key', key);
    expect(cut.code).toBe(1);
    expect(cut.output).toContain(`A head kept counts ${sequence + 1} events, and there are ${sequence}.`);
  });

  it('believes no head that was changed, of another record, or of another key', async () => {
    const note = await signedHead();
    const record = kept('record.jsonl', await wholeRecord());
    const key = await publicKey();
    const told = kept('public.pem', pem(key));
    const head = kept('head.txt', note);
    const stranger = kept('stranger.pem', pem(generateKeyPairSync('ed25519').publicKey));
    const site = await shutdown.plant.administrator.agent.get('/api/v1/site/record/signed-head').expect(200);
    const changed = kept('changed.txt', note.replace(/time \d{4}/, 'time 2020'));
    for (const [words, complaint] of [
      [['--signed-head', changed, '--key', told], 'was changed after it was signed'],
      [['--signed-head', head, '--key', stranger], 'but by another key'],
      [['--signed-head', kept('site.txt', site.text), '--key', told], 'is of the record'],
      [['--signed-head', kept('cut.txt', note.slice(20)), '--key', told], 'is not in the form of one'],
      [['--key', stranger], 'The head in the export is not signed by'],
      [['--signed-head', head, '--key', 'F'.repeat(64)], 'none of those that the export carries'],
    ] as const) {
      const { code, output } = await run(record, ...words);
      expect({ code, output }, complaint).toEqual({ code: 3, output: expect.stringContaining(complaint) });
    }
    for (const words of [
      ['--signed-head', head],
      ['--key', 'nonsense'],
      ['--signed-head', join(folder, 'none'), '--key', told],
    ])
      expect(await run(record, ...words)).toMatchObject({ code: 2 });
  });

  it('is told that a key which only came with the export proves nothing', async () => {
    const { code, output } = await run(kept('record.jsonl', await wholeRecord()));
    expect(code).toBe(0);
    expect(output).toContain('proves nothing until its fingerprint is compared');
  });

  it('finds that somebody who forged the record put a key of his own beside it', async () => {
    const [first = '', ...others] = (await wholeRecord()).trimEnd().split('\n');
    const about = JSON.parse(first);
    const path = someKey('forger.pem');
    const forger = readKeyFile({ path, given: false });
    if (!forger) throw new Error('The forger has a key.');
    const { signedHead: sign } = await import('../../apps/server/src/platform/record-key/checkpoint.ts');
    const { siteId, streamId, head } = about;
    const forged = {
      ...about,
      signedHead: sign({ siteId, streamId, ...head }, new Date(), forger.privateKey, forger.publicKey),
      keys: [{ fingerprint: forger.fingerprint, publicKey: pem(forger.publicKey) }],
    };
    const record = kept('forged.jsonl', [JSON.stringify(forged), ...others, ''].join('\n'));
    expect((await run(record)).code).toBe(0);
    const { code, output } = await run(record, '--key', kept('public.pem', pem(await publicKey())));
    expect({ code, output }).toEqual({ code: 3, output: expect.stringContaining('but by another key') });
  });

  it('can hold the record of one joint against the head of the same moment', async () => {
    const { jointId } = await listJoint(shutdown);
    const head = kept('now.txt', await signedHead());
    const joint = kept('joint.json', await asked(`${base}/joints/${jointId}/record`));
    const key = fingerprintOf(await publicKey());
    expect(await run(joint, '--signed-head', head, '--key', key)).toMatchObject({ code: 0 });
    await listJoint(shutdown);
    const later = kept('later.txt', await signedHead());
    const { code, output } = await run(joint, '--signed-head', later, '--key', key);
    expect({ code, output }).toEqual({ code: 1, output: expect.stringContaining('ask for a whole record') });
  });
});

describe('the key of an installation', () => {
  const signerWith = (path: string) =>
    new HeadSigner(shutdown.plant.db, { path, given: true }, () => shutdown.plant.now);

  it('is one for a database: a process with another refuses to sign, and says what to do', async () => {
    const [current] = (await keys()).keys;
    const other = signerWith(someKey('other.pem'));
    const { signed, unsigned } = await other.sign({ siteId: 's', streamId: 't', sequence: 1, root: 'f'.repeat(64) });
    expect(signed).toBeNull();
    expect(unsigned).toContain(`this database’s is ${current?.fingerprint}`);
    expect(unsigned).toContain('npm run record-key -- change');
    expect(await other.warnings()).toEqual([unsigned]);
    // A replica with a copy of the file signs like the first.
    const copy = join(folder, 'copy.pem');
    copyFileSync(shutdown.plant.recordKey.path, copy);
    expect(await signerWith(copy).warnings()).toEqual([]);
    expect((await keys()).keys).toHaveLength(1);
  });

  it('signs nothing where none is named beside a database of one’s own', async () => {
    const file = keyFileOf({ recordKey: undefined, databaseUrl: 'postgresql://plant/seatwell', dataFolder: folder });
    expect(file).toBeUndefined();
    const [warning] = await new HeadSigner(shutdown.plant.db, file, () => new Date()).warnings();
    expect(warning).toContain('no key is named');
    expect(warning).toContain('SEATWELL_RECORD_KEY');
  });

  it('is not made anew where its file is missing and the database knows another', async () => {
    const path = join(folder, 'lost.pem');
    const signer = new HeadSigner(shutdown.plant.db, { path, given: false }, () => new Date());
    expect(await signer.warnings()).toEqual([expect.stringContaining(`Bring its file to ${path}`)]);
    expect(existsSync(path)).toBe(false);
  });

  it('is refused where others can read it, or where it is none', () => {
    const open = someKey('open.pem');
    chmodSync(open, 0o644);
    expect(() => readKeyFile({ path: open, given: true })).toThrow('chmod 600');
    const rsa = generateKeyPairSync('rsa', { modulusLength: 2048 }).privateKey;
    const wrong = kept('rsa.pem', rsa.export({ format: 'pem', type: 'pkcs8' }) as string);
    chmodSync(wrong, 0o600);
    expect(() => readKeyFile({ path: wrong, given: true })).toThrow('of the kind rsa');
    expect(() => readKeyFile({ path: join(folder, 'none.pem'), given: true })).toThrow('does not exist');
  });

  it('stays known to the database: its app can neither change nor remove what signed', async () => {
    const { db } = shutdown.plant;
    await expect(db.query("UPDATE record_key SET fingerprint = 'x'")).rejects.toThrow(/permission denied|append-only/);
    await expect(db.query('DELETE FROM record_key')).rejects.toThrow(/permission denied|append-only/);
  });

  it('is changed by a command while the server runs, and what the old one signed still verifies', async () => {
    const { db, recordKey, now } = shutdown.plant;
    const before = kept('before.txt', await signedHead());
    const old = await publicKey();
    await changeKey(db, recordKey, now);
    const next = await publicKey();
    expect(fingerprintOf(next)).not.toBe(fingerprintOf(old));
    expect((await keys()).keys.map(({ fingerprint }) => fingerprint)).toEqual([old, next].map(fingerprintOf));
    await listJoint(shutdown);
    const after = await signedHead();
    expect(checkSignedHead(after, [next])).not.toHaveProperty('wrong');
    expect(checkSignedHead(after, [old])).toMatchObject({ byAnother: true });
    const record = kept('record.jsonl', await wholeRecord());
    const byOld = await run(record, '--signed-head', before, '--key', fingerprintOf(old));
    expect(byOld).toEqual({ code: 0, output: expect.stringContaining('It goes on from the head of ') });
    expect(await run(record, '--key', fingerprintOf(old))).toMatchObject({ code: 3 });
    expect(await run(record, '--key', fingerprintOf(next))).toMatchObject({ code: 0 });
  });

  it('that was named is changed by putting another into its file; one that signed before does not come back', async () => {
    const { db, recordKey, now } = shutdown.plant;
    const former = join(folder, 'former.pem');
    copyFileSync(recordKey.path, former);
    const named = { path: someKey('named.pem'), given: true };
    await changeKey(db, named, now);
    expect(await signerWith(named.path).warnings()).toEqual([]);
    await expect(changeKey(db, named, now)).rejects.toThrow('signs already, or signed before');
    await expect(changeKey(db, { path: former, given: true }, now)).rejects.toThrow('signs already, or signed before');
    // The server that runs has the former key in its file: it says so instead of signing.
    const refused = await shutdown.witness.agent.get(`${base}/record/signed-head`).expect(503);
    expect(refused.body).toMatchObject({
      type: expect.stringMatching(/head-unsigned$/),
      detail: expect.stringContaining('Give every process the file'),
    });
    expect(await head()).toMatchObject({ signed: null, unsigned: refused.body.detail });
    const health = await shutdown.witness.agent.get('/api/v1/health').expect(200);
    expect(health.body.warnings).toContainEqual(expect.stringContaining('not signed'));
    expect(JSON.parse((await wholeRecord()).split('\n')[0] ?? '')).toMatchObject({ signedHead: null });
  });
});
