import type { SignedIn } from './plant.ts';
import type { Shutdown } from './shutdown.ts';

/** Reads below a shutdown's address; anything but 200 fails the test with the answer. */
export async function read<T>(shutdown: Shutdown, who: SignedIn, path: string): Promise<T> {
  const { status, body } = await who.agent.get(`/api/v1/shutdowns/${shutdown.shutdownId}${path}`);
  if (status !== 200) throw new Error(`${path} answered ${status}: ${JSON.stringify(body, null, 1)}`);
  return body as T;
}

/** Reads of the site. */
export async function readSite<T>(who: SignedIn, path: string): Promise<T> {
  const { status, body } = await who.agent.get(`/api/v1${path}`);
  if (status !== 200) throw new Error(`${path} answered ${status}: ${JSON.stringify(body, null, 1)}`);
  return body as T;
}
