// `npm run check:fresh`: clones this checkout's last commit into a temporary folder with spaces in its path and runs what
// README tells a newcomer to run, with LANG unset: started by root as root and as an ordinary user, else as the present
// user only. Ctrl-C must leave nothing behind, and a second start must keep the data.
// `npm run check:fresh -- --full` runs `npm test` there as well; without it that is left to whoever calls this.
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bareEnvironment, commandsOf, processesIn, shell } from './commands.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const full = process.argv.includes('--full');
const asRoot = process.getuid() === 0;
/** The account that every Linux has and that owns nothing. */
const NOBODY = { uid: 65_534, gid: 65_534 };

const base = mkdtempSync(join(tmpdir(), 'seatwell fresh machine-'));
chmodSync(base, 0o755);
let left = () => {};

const people = asRoot
  ? [
      { name: 'root', user: {} },
      { name: 'an ordinary user', user: NOBODY },
    ]
  : [{ name: 'the present user', user: {} }];

const say = (line) => console.log(`${new Date().toISOString().slice(11, 19)}  ${line}`);

function must(what, holds, why = '') {
  if (!holds) throw new Error(`${what}${why ? `: ${why}` : ''}`);
  say(`ok   ${what}`);
}

/** A home, a clone in a folder that only its owner may enter, and a cache of npm, all the person's own. */
function settle({ name, user }) {
  const home = join(base, `home of ${name}`);
  const folder = join(home, 'the plant', 'seatwell');
  mkdirSync(join(home, 'the plant'), { recursive: true });
  chmodSync(home, 0o700);
  execFileSync('git', ['clone', '--quiet', '--no-local', root, folder]);
  let cache = execFileSync('npm', ['config', 'get', 'cache'], { cwd: root, encoding: 'utf8' }).trim();
  if (user.uid !== undefined) {
    const copy = join(home, 'npm-cache');
    cpSync(join(cache, '_cacache'), join(copy, '_cacache'), { recursive: true });
    cache = copy;
    execFileSync('chown', ['-R', `${user.uid}:${user.gid}`, home]);
  }
  return { home, folder, user, env: bareEnvironment(home, cache) };
}

async function started(place, line) {
  const command = shell(line, place);
  left = command.kill;
  const [, url] = await command.until(/Seatwell runs at (http:\S+)/);
  const [, email, password] = await command.until(/coordinator: (\S+) {2}(\S+)\n/);
  return { command, url, email, password };
}

async function signedIn({ url, email, password }) {
  const headers = { 'content-type': 'application/json' };
  const answer = await fetch(`${url}/api/v1/session`, {
    method: 'POST',
    headers,
    body: JSON.stringify({ email, password }),
  });
  const cookie = (answer.headers.get('set-cookie') ?? '').split(';')[0];
  return { status: answer.status, headers: { cookie }, me: await answer.json() };
}

async function interrupted(place, { command, url }) {
  command.interrupt();
  await command.end;
  left = () => {};
  must(
    'Ctrl-C stops it',
    await fetch(url).then(
      () => false,
      () => true,
    ),
  );
  const running = processesIn(place.folder);
  must('no process is left', running.length === 0, running.join(', '));
}

async function newcomer(person) {
  const place = settle(person);
  const { start, test } = commandsOf(readFileSync(join(place.folder, 'README.md'), 'utf8'));
  say(`As ${person.name}: ${start}`);
  const first = await started(place, start);
  const health = await (await fetch(`${first.url}/api/v1/health`)).json();
  must(
    'it is healthy and warns of nothing',
    health.status === 'ok' && health.warnings.length === 0,
    JSON.stringify(health),
  );
  must('the page is there', (await (await fetch(first.url)).text()).includes('<script'));
  const { status, headers, me } = await signedIn(first);
  must('a demo account signs in to the demo shutdown', status === 200 && me.shutdowns.length === 1, JSON.stringify(me));
  const preferences = { method: 'PUT', headers: { ...headers, 'content-type': 'application/json' } };
  const kept = { ...preferences, body: JSON.stringify({ theme: 'dark' }) };
  must('it takes what is changed', (await fetch(`${first.url}/api/v1/session/preferences`, kept)).status === 200);
  await interrupted(place, first);

  const second = await started(place, start.split('&&').at(-1).trim());
  must('the second start builds nothing', !second.command.said.all.includes('Building the app'));
  must('and keeps what was done', (await signedIn(second)).me.preferences.theme === 'dark');
  await interrupted(place, second);

  const git = ['-c', `safe.directory=${place.folder}`, '-C', place.folder];
  const changed = execFileSync('git', [...git, 'status', '--porcelain'], { encoding: 'utf8' });
  must('nothing in the clone has changed', changed === '', changed);
  if (full) await tested(place, person, test);
  rmSync(place.home, { recursive: true, force: true });
}

async function tested(place, { name }, line) {
  say(`As ${name}: ${line}`);
  const command = shell(line, place);
  left = command.kill;
  const { code } = await command.end;
  left = () => {};
  must('every test passes', code === 0, command.said.all.slice(-6000));
}

try {
  const uncommitted = spawnSync('git', ['-C', root, 'status', '--porcelain'], { encoding: 'utf8' }).stdout;
  if (uncommitted) say('Changes that are not committed are not part of the clone.');
  if (!asRoot) say('Not started by root: only the present user is tried.');
  for (const person of people) await newcomer(person);
  say(
    full ? 'Both commands of README work.' : 'The first command of README works; --full runs its tests there as well.',
  );
} catch (error) {
  console.error(`FAILED  ${error.message}`);
  process.exitCode = 1;
} finally {
  left();
  rmSync(base, { recursive: true, force: true });
}
