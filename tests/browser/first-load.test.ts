import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { repositoryRoot } from '../../apps/server/src/platform/repository-root.ts';
import { type Demo, openDemo } from './support/demo.ts';
import { phone } from './support/gallery.ts';
import { settled } from './support/watched-page.ts';

let demo: Demo;
beforeAll(async () => {
  demo = await openDemo();
});
afterAll(() => demo?.close());

const built = join(repositoryRoot(), 'apps', 'web', 'dist');

test('a technician who signs in for the first time loads at most 200 kB of code and styles, fonts aside', async () => {
  const context = await demo.browser.newContext({ ...phone, baseURL: demo.url });
  const page = await context.newPage();
  const files = new Set<string>();
  page.on('response', (response) => files.add(new URL(response.url()).pathname));
  await page.goto('/');
  await settled(page);
  const { email, password } = demo.accountOf('technician');
  await page.getByLabel('E-mail').fill(email);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL(/\/my-joints/);
  // The page that was left has a title as well.
  await page.getByRole('heading', { level: 1 }).filter({ hasNotText: 'Sign in' }).waitFor();
  await settled(page);

  const code = [...files].filter((file) => /\.(js|css)$/.test(file));
  const zipped = code.map((file) => gzipSync(readFileSync(join(built, file))).length);
  expect(code.length).toBeGreaterThan(5);
  expect(zipped.reduce((sum, bytes) => sum + bytes, 0)).toBeLessThanOrEqual(200_000);
  await context.close();
});
