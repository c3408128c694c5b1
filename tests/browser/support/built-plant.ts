import type { AddressInfo } from 'node:net';
import type { Browser } from 'playwright-core';
import { createTestDatabase, type TestDatabase } from '../../api/support/database.ts';
import { PASSWORD } from '../../api/support/plant.ts';
import { openShutdownOn, type Shutdown } from '../../api/support/shutdown.ts';
import { launchChromium } from './chromium.ts';
import { type People, peopleOf } from './people.ts';

/** A shutdown on a server of its own that serves the built web app, and a browser. */
export interface BuiltPlant extends People {
  readonly shutdown: Shutdown;
  readonly browser: Browser;
  /** path of an address below the shutdown */
  readonly at: (path: string) => string;
  readonly close: () => Promise<void>;
}

/** @param given a database of the caller's; one of the test run's own server otherwise */
export async function openBuiltPlant(given?: TestDatabase): Promise<BuiltPlant> {
  const shutdown = await openShutdownOn(given ?? (await createTestDatabase()));
  // The plant's clock is the device's: what a browser records has to be of now.
  Object.defineProperty(shutdown.plant, 'now', { configurable: true, get: () => new Date(), set: () => undefined });
  const { port } = shutdown.plant.app.server.address() as AddressInfo;
  const { plant, coordinator, engineer, operations, technician, mate, chargehand, inspector, witness } = shutdown;
  const accounts = [
    plant.administrator,
    coordinator,
    engineer,
    operations,
    technician,
    mate,
    chargehand,
    inspector,
    witness,
  ].map((person) => ({ role: person.role, name: person.email, email: person.email, password: PASSWORD }));
  const browser = await launchChromium();
  return {
    shutdown,
    browser,
    ...peopleOf(browser, { url: `http://127.0.0.1:${port}`, accounts }),
    at: (path) => `/shutdowns/${shutdown.shutdownId}${path}`,
    close: async () => {
      await browser.close();
      await shutdown.close();
    },
  };
}
