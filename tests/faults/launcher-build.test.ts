import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { repositoryRoot } from '../../apps/server/src/platform/repository-root.ts';

// A checkout in miniature: the launcher is ours, the "app" says what it was built from, and its build
// script copies it. What the real build makes is the other tests' matter; here it is when it runs.
let checkout: string;

const write = (path: string, content: string) => {
  mkdirSync(dirname(join(checkout, path)), { recursive: true });
  writeFileSync(join(checkout, path), content);
};

const manifest = (build: string, node = '>=20.19') =>
  JSON.stringify({ type: 'module', engines: { node }, scripts: { build } });

const goodBuild = `echo words of the build && mkdir -p apps/server/dist apps/web/dist \
  && cp apps/server/src/main.ts apps/server/dist/main.js && cp apps/web/index.html apps/web/dist/`;

beforeEach(() => {
  checkout = mkdtempSync(join(tmpdir(), 'seatwell build-'));
  for (const file of ['launcher.mjs', 'build-stamp.mjs']) {
    mkdirSync(join(checkout, 'apps', 'server'), { recursive: true });
    cpSync(join(repositoryRoot(), 'apps', 'server', file), join(checkout, 'apps', 'server', file));
  }
  mkdirSync(join(checkout, 'node_modules'));
  write('package.json', manifest(goodBuild));
  write('apps/server/src/main.ts', 'console.log("first")');
  write('apps/web/index.html', '<!doctype html>');
  write('packages/calc/src/torque.ts', 'export {}');
});

afterEach(() => rmSync(checkout, { recursive: true, force: true }));

function launch(): { said: string; built: boolean; code: number | null; complaint: string } {
  const { stdout, stderr, status } = spawnSync(process.execPath, ['apps/server/launcher.mjs'], {
    cwd: checkout,
    encoding: 'utf8',
    env: { PATH: process.env.PATH, HOME: checkout },
  });
  return {
    said: stdout,
    built: stderr.includes('Building the app from the current sources'),
    code: status,
    complaint: stderr,
  };
}

test('the first start builds, the next one does not, and standard output is the app’s alone', () => {
  expect(launch()).toMatchObject({ said: 'first\n', built: true, code: 0 });
  expect(launch()).toMatchObject({ said: 'first\n', built: false, code: 0 });
});

test('after a pull the new sources run, even where the time of the file has not moved', () => {
  launch();
  const source = join(checkout, 'apps/server/src/main.ts');
  const { atime, mtime } = statSync(source);
  write('apps/server/src/main.ts', 'console.log("pulled")');
  utimesSync(source, atime, mtime);

  expect(launch()).toMatchObject({ said: 'pulled\n', built: true, code: 0 });
  expect(launch()).toMatchObject({ said: 'pulled\n', built: false, code: 0 });
});

test.each([
  ['a package that both apps share changes', () => write('packages/calc/src/torque.ts', 'export const k = 1')],
  ['a source file is deleted', () => rmSync(join(checkout, 'packages/calc/src/torque.ts'))],
  ['a dependency changes', () => write('package-lock.json', '{}')],
  ['the page of the web app changes', () => write('apps/web/index.html', '<!doctype html><p>')],
  ['the built web app is missing', () => rmSync(join(checkout, 'apps/web/dist'), { recursive: true })],
])('the app is built anew when %s', (_, change) => {
  launch();
  change();

  expect(launch()).toMatchObject({ said: 'first\n', built: true, code: 0 });
  expect(launch().built).toBe(false);
});

test('a test file alone causes no build', () => {
  launch();
  write('packages/calc/test/torque.test.ts', 'test()');
  write('apps/web/src/figure.test.tsx', 'test()');

  expect(launch().built).toBe(false);
});

test('a build by hand followed by the stamp counts as up to date', () => {
  spawnSync('npm', ['run', 'build'], { cwd: checkout, env: { PATH: process.env.PATH, HOME: checkout } });
  spawnSync(process.execPath, ['apps/server/build-stamp.mjs'], { cwd: checkout });

  expect(launch()).toMatchObject({ said: 'first\n', built: false, code: 0 });
});

test('a failed build starts nothing, and the next start tries again', () => {
  launch();
  write('apps/server/src/main.ts', 'console.log("second")');
  write('package.json', manifest('echo the reason >&2 && exit 3'));

  const failed = launch();
  expect(failed).toMatchObject({ said: '', code: 1 });
  expect(failed.complaint).toContain('the reason');
  expect(failed.complaint).toContain('"npm run build" failed');

  write('package.json', manifest(goodBuild));
  expect(launch()).toMatchObject({ said: 'second\n', built: true, code: 0 });
});

test('an image that carries the build without sources starts as it is', () => {
  launch();
  rmSync(join(checkout, 'apps/server/src'), { recursive: true });

  expect(launch()).toMatchObject({ said: 'first\n', built: false, code: 0 });
});

test('an older Node is refused with the version that is needed', () => {
  write('package.json', manifest(goodBuild, '>=999.1'));

  const refused = launch();
  expect(refused).toMatchObject({ said: '', built: false, code: 1 });
  expect(refused.complaint).toContain(`Seatwell needs Node 999.1 or newer, and this is Node ${process.versions.node}`);
});

test('without installed packages the start says how to get them', () => {
  rmSync(join(checkout, 'node_modules'), { recursive: true });

  expect(launch()).toMatchObject({
    said: '',
    code: 1,
    complaint: 'The packages are not installed: run "npm ci" first.\n',
  });
});
