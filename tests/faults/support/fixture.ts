import { afterAll, afterEach } from 'vitest';
import { type Checkout, makeCheckout, removeBundle } from './checkout.ts';
import { endPostgres } from './postgres-processes.ts';
import { killRemaining } from './seatwell.ts';

/** Checkouts for the tests of a file; each is removed after its test with whatever still runs in it. */
export function checkouts(): typeof makeCheckout {
  const made: Checkout[] = [];
  afterEach(async () => {
    killRemaining();
    for (const checkout of made.splice(0)) {
      await endPostgres(checkout);
      checkout.remove();
    }
  });
  afterAll(removeBundle);
  return async (options) => {
    const checkout = await makeCheckout(options);
    made.push(checkout);
    return checkout;
  };
}
