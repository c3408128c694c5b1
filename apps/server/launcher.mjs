// `npm start`, `npm run demo` and the commands `backup`, `restore`, `verify`, `nightly` and `record-key`: checks Node,
// brings the build up to date, and starts the server in this process, so that Ctrl-C reaches it directly. Plain
// JavaScript: it must run before anything is built.
// Options are those of the server: `npm start -- --help`.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { isBuilt, sourcesHash, writeStamp } from './build-stamp.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

function giveUp(message) {
  process.stderr.write(`${message}\n`);
  process.exit(1);
}

function checkNode() {
  const { engines } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const needed = engines.node
    .replace(/[^\d.]/g, '')
    .split('.')
    .map(Number);
  const present = process.versions.node.split('.').map(Number);
  const older = present[0] !== needed[0] ? present[0] < needed[0] : present[1] < (needed[1] ?? 0);
  if (older) {
    giveUp(`Seatwell needs Node ${needed.join('.')} or newer, and this is Node ${process.versions.node}.`);
  }
}

function bringBuildUpToDate() {
  if (isBuilt(root)) return;
  if (!existsSync(join(root, 'node_modules'))) giveUp('The packages are not installed: run "npm ci" first.');
  process.stderr.write('Building the app from the current sources …\n');
  const hash = sourcesHash(root);
  const [command, ...words] = process.env.npm_execpath ? [process.execPath, process.env.npm_execpath] : ['npm'];
  // Standard output is for the one line of --json.
  // Always the build that people use, whatever NODE_ENV the caller has for itself.
  const { status, error } = spawnSync(command, [...words, 'run', 'build'], {
    cwd: root,
    env: { ...process.env, NODE_ENV: 'production' },
    stdio: ['ignore', 2, 2],
  });
  if (error) giveUp(`"npm run build" could not be started: ${error.message}`);
  if (status !== 0) giveUp('"npm run build" failed; its messages are above. Nothing was started.');
  writeStamp(root, hash);
}

checkNode();
bringBuildUpToDate();
const command = ['backup', 'restore', 'verify', 'nightly', 'record-key'].find((name) => name === process.argv[2]);
if (command !== undefined) process.argv.splice(2, 1);
await import(pathToFileURL(join(root, 'apps', 'server', 'dist', `${command ?? 'main'}.js`)).href);
