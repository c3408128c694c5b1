// `npm run check:proxy`: nginx itself checks and runs apps/server/deploy/nginx.conf before a server of ours, and a
// browser's requests go through it. Needs nginx on the PATH (Debian: apt-get install nginx-light) and openssl; without
// them it fails. The build is brought up to date first.
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'seatwell-proxy-'));
// Where it is started by root, nginx works as another user and buffers large bodies in here.
chmodSync(folder, 0o755);
const running = [];
const at = (name) => join(folder, name);

function must(command, args) {
  const { status, error, stderr } = spawnSync(command, args, { encoding: 'utf8' });
  if (error) throw new Error(`${command} cannot be run (${error.message}): it is needed for this check.`);
  if (status !== 0) throw new Error(`${command} ${args.join(' ')} ended with ${status}:\n${stderr}`);
}

async function freePort() {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address();
  server.close();
  return port;
}

async function startServer() {
  const words = [
    'apps/server/launcher.mjs',
    '--json',
    '--port',
    '0',
    '--data',
    at('data'),
    '--trust-proxy',
    'loopback',
  ];
  const child = spawn(process.execPath, words, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
  running.push(child);
  const [line] = await once(child.stdout, 'data');
  return new URL(JSON.parse(String(line)).url).port;
}

/** The configuration as it is deployed, but for ports, addresses and folders of this machine. */
function configured(ports) {
  let text = readFileSync(join(root, 'apps/server/deploy/nginx.conf'), 'utf8');
  const replace = (from, to) => {
    if (!text.includes(from)) throw new Error(`nginx.conf no longer says “${from}”: this check must follow it.`);
    text = text.replaceAll(from, to);
  };
  // First, since the folder of this check may lie in there.
  replace('/tmp/', `${folder}/`);
  replace('listen 80 default_server', `listen 127.0.0.1:${ports.http} default_server`);
  replace('listen 443 ssl', `listen 127.0.0.1:${ports.https} ssl`);
  replace('server:4310', `127.0.0.1:${ports.server}`);
  replace('/etc/nginx/certificates/', `${folder}/`);
  replace('resolver 127.0.0.11', 'resolver 127.0.0.1');
  writeFileSync(at('nginx.conf'), text);
}

function ask(port, path, { method = 'GET', headers = {}, body } = {}) {
  return new Promise((resolve, reject) => {
    const options = {
      host: '127.0.0.1',
      servername: 'localhost',
      port,
      path,
      method,
      ca: readFileSync(at('server.crt')),
    };
    const asked = request({ ...options, headers: { host: `localhost:${port}`, ...headers } }, (response) => {
      let text = '';
      const answer = { status: response.statusCode, headers: response.headers, text: () => text, response };
      response.on('data', (part) => {
        text += part;
        if (String(response.headers['content-type']).startsWith('text/event-stream')) resolve(answer);
      });
      response.on('end', () => resolve(answer));
    });
    asked.on('error', reject);
    asked.end(body);
  });
}

function expect(what, is, wanted) {
  if (JSON.stringify(is) !== JSON.stringify(wanted)) {
    throw new Error(`${what}: ${JSON.stringify(is)}, and it should be ${JSON.stringify(wanted)}.`);
  }
  console.log(`ok   ${what}`);
}

async function check() {
  const subject = ['-subj', '/CN=localhost', '-addext', 'subjectAltName=DNS:localhost'];
  const key = ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes', '-keyout', at('server.key')];
  must('openssl', ['req', '-x509', ...key, '-days', '1', '-out', at('server.crt'), ...subject]);
  const ports = { http: await freePort(), https: await freePort(), server: await startServer() };
  configured(ports);
  must('nginx', ['-t', '-p', folder, '-c', at('nginx.conf')]);
  console.log('ok   nginx takes the configuration');
  const nginx = spawn('nginx', ['-p', folder, '-c', at('nginx.conf'), '-g', 'daemon off;'], { stdio: 'inherit' });
  running.push(nginx);
  for (let tries = 0; ; tries += 1) {
    const up = await ask(ports.https, '/api/v1/health').catch(() => null);
    if (up) break;
    if (tries > 100) throw new Error('nginx does not listen.');
    await new Promise((resolve) => setTimeout(resolve, 100));
  }

  const { https } = ports;
  const origin = `https://localhost:${https}`;
  const json = { 'content-type': 'application/json', origin };
  const plain = await fetch(`http://127.0.0.1:${ports.http}/register?x=1`, { redirect: 'manual' });
  expect(
    'plain http redirects',
    [plain.status, plain.headers.get('location')],
    [308, 'https://127.0.0.1/register?x=1'],
  );
  expect('health comes through', (await ask(https, '/api/v1/health')).status, 200);

  const administrator = { name: 'Ada', company: 'Owner', email: 'ada@plant.example', password: 'a long test secret' };
  const site = { siteName: 'Test', timeZone: 'Europe/Oslo', units: 'SI', administrator };
  const visit = { method: 'POST', headers: json, body: JSON.stringify(site) };
  const foreign = { ...visit, headers: { ...json, origin: 'https://elsewhere.example' } };
  expect('another site’s origin is refused', (await ask(https, '/api/v1/first-visit', foreign)).status, 403);
  const signedIn = await ask(https, '/api/v1/first-visit', visit);
  expect('our own origin is taken', signedIn.status, 200);
  const [cookie] = signedIn.headers['set-cookie'];
  expect(
    'the cookie is bound to the host and secure',
    [/^__Host-/.test(cookie), /; Secure/.test(cookie)],
    [true, true],
  );

  const session = { cookie: cookie.split(';')[0] };
  const stream = await ask(https, '/api/v1/site/live', { headers: session });
  expect(
    'live updates arrive while their answer goes on',
    [stream.status, stream.text().includes('retry:')],
    [200, true],
  );
  stream.response.destroy();

  const large = { method: 'POST', headers: { ...json, ...session }, body: Buffer.alloc(40 * 1024 * 1024, 'x') };
  const refused = await ask(https, '/api/v1/site/commands/person-registered', large).catch((error) => error);
  // Ours says so in words; the proxy would say it in HTML.
  const by = refused instanceof Error ? refused.message : String(refused.headers['content-type']).split(';')[0];
  expect('what is too large is refused by the server itself', by, 'application/problem+json');
}

try {
  await check();
  console.log('The proxy does what it is there for.');
} catch (error) {
  console.error(`FAILED  ${error.message}`);
  process.exitCode = 1;
} finally {
  for (const child of running.reverse()) {
    if (child.exitCode !== null) continue;
    child.kill('SIGTERM');
    await once(child, 'exit');
  }
  rmSync(folder, { recursive: true, force: true });
}
