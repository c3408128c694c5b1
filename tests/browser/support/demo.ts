import type { Browser } from 'playwright-core';
import { inject } from 'vitest';
import { launchChromium } from './chromium.ts';
import type { LaunchedServer } from './launched-server.ts';
import { type People, peopleOf } from './people.ts';

export interface Demo extends People {
  readonly url: string;
  readonly browser: Browser;
  readonly close: () => Promise<void>;
}

/** A browser for the run's demo server; the first caller of a run waits until it is loaded. */
export async function openDemo(): Promise<Demo> {
  const answer = await fetch(inject('demo'));
  if (!answer.ok) throw new Error(await answer.text());
  const server = (await answer.json()) as Pick<LaunchedServer, 'url' | 'accounts'>;
  const browser = await launchChromium();
  return { ...peopleOf(browser, server), url: server.url, browser, close: () => browser.close() };
}
