import { createHash, createPublicKey, X509Certificate } from 'node:crypto';
import { connect } from 'node:tls';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchChromium } from './support/chromium.ts';
import { phone } from './support/gallery.ts';
import { type LaunchedServer, launchServer } from './support/launched-server.ts';
import { picture } from './support/running-plant.ts';
import { settled } from './support/watched-page.ts';

let server: LaunchedServer;
let redirectUrl: string;
beforeAll(async () => {
  server = await launchServer(['--tls-local', '--redirect-port', '0']);
  redirectUrl = server.redirectUrl ?? '';
});
afterAll(() => server?.stop());

const browsers: Browser[] = [];
afterAll(async () => {
  for (const browser of browsers) await browser.close();
});
async function browserWith(...words: string[]): Promise<Browser> {
  const browser = await launchChromium(words);
  browsers.push(browser);
  return browser;
}

/** SHA-256 of the public key that the server shows, verified against the authority that it offers. */
async function keyOfVerifiedServer(): Promise<string> {
  const loaded = await fetch(`${redirectUrl}/seatwell-authority.crt`);
  const ca = new X509Certificate(Buffer.from(await loaded.arrayBuffer())).toString();
  const { port } = new URL(server.url);
  const certificate = await new Promise<Buffer>((resolve, reject) => {
    const socket = connect({ port: Number(port), host: '127.0.0.1', ca }, () => {
      resolve(socket.getPeerX509Certificate()?.raw ?? Buffer.alloc(0));
      socket.end();
    });
    socket.once('error', reject);
  });
  const key = createPublicKey(new X509Certificate(certificate).toString()).export({ type: 'spki', format: 'der' });
  return createHash('sha256').update(key).digest('base64');
}

test('a browser that was not told of the authority shows nothing of ours over https, and the page of how to trust it over http', async () => {
  const browser = await browserWith();
  const context = await browser.newContext({ ...phone });
  await expect((await context.newPage()).goto(server.url)).rejects.toThrow('ERR_CERT_AUTHORITY_INVALID');

  const page = await context.newPage();
  await page.goto(`${redirectUrl}/trust`);
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Trust this server');
  // The page fits a phone and its style is let through by its own policy.
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  expect(await page.evaluate(() => getComputedStyle(document.querySelector('code') as Element).display)).toBe('block');
  await picture(page, 'trust');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Get the certificate' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('seatwell-authority.crt');
});

test('a browser that takes this server’s key alone signs in over https, in a secure context, with a cookie bound to the host', async () => {
  const browser = await browserWith(`--ignore-certificate-errors-spki-list=${await keyOfVerifiedServer()}`);
  const context = await browser.newContext({ ...phone });
  const page = await context.newPage();
  // From plain http the person is led to https without a word.
  await page.goto(`${redirectUrl}/first-visit`);
  await settled(page);
  expect(new URL(page.url()).origin).toBe(server.url);
  expect(await page.evaluate(() => window.isSecureContext)).toBe(true);

  const answer = await page.evaluate(async () => {
    const response = await fetch('/api/v1/first-visit', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        siteName: 'Test site',
        timeZone: 'Europe/Oslo',
        units: 'SI',
        administrator: { name: 'Ada', company: 'Owner', email: 'ada@plant.example', password: 'a long test secret' },
      }),
    });
    return response.status;
  });
  expect(answer).toBe(200);
  await context.clearCookies();

  await page.goto(`${server.url}/sign-in`);
  await page.getByLabel('E-mail').fill('ada@plant.example');
  await page.getByLabel('Password').fill('a long test secret');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => url.pathname !== '/sign-in');
  expect(await context.cookies()).toMatchObject([
    { name: '__Host-seatwell-session', secure: true, httpOnly: true, sameSite: 'Lax', path: '/', domain: '127.0.0.1' },
  ]);
  const me = await page.evaluate(
    async () => ((await (await fetch('/api/v1/session')).json()) as { name: string }).name,
  );
  expect(me).toBe('Ada');
});
