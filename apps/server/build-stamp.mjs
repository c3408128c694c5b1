// Tells whether the built output belongs to the sources as they are now: Node 20 runs no .ts files, so a
// `git pull` must not leave yesterday's build in service. A hash of the content, since times of files mean
// little after a checkout, a copy or an unpacked archive.
// `node apps/server/build-stamp.mjs` after a build of both apps marks it as theirs.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const stampIn = (root) => join(root, 'apps', 'server', 'dist', '.built-from');

/** SHA-256 of everything that the build reads, or undefined where there are no sources (an image). */
export function sourcesHash(root) {
  if (!existsSync(join(root, 'apps', 'server', 'src'))) return undefined;
  const hash = createHash('sha256');
  const files = [join(root, 'package-lock.json')];
  for (const group of ['apps', 'packages']) {
    for (const name of folderNames(join(root, group))) files.push(...filesUnder(join(root, group, name)));
  }
  for (const file of files.filter((path) => existsSync(path)).sort()) {
    const content = readFileSync(file);
    hash.update(`${relative(root, file).split(sep).join('/')}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex');
}

/** Whether both apps are built, and from the sources as they are now. */
export function isBuilt(root) {
  const outputs = ['apps/server/dist/main.js', 'apps/web/dist/index.html'];
  if (!outputs.every((path) => existsSync(join(root, path)))) return false;
  const now = sourcesHash(root);
  if (now === undefined) return true;
  return existsSync(stampIn(root)) && readFileSync(stampIn(root), 'utf8') === now;
}

/** Marks the build as made from sources with this hash. */
export function writeStamp(root, hash = sourcesHash(root)) {
  if (hash !== undefined) writeFileSync(stampIn(root), hash);
}

function folderNames(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name);
}

function filesUnder(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return ['dist', 'node_modules', 'test'].includes(entry.name) ? [] : filesUnder(path);
    return entry.isFile() && !/\.test\.tsx?$/.test(entry.name) ? [path] : [];
  });
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  writeStamp(fileURLToPath(new URL('../..', import.meta.url)));
}
