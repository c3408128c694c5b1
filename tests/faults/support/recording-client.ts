import type { Payload, ShutdownEventType, SiteEventType } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { springShutdown } from '../../api/support/sample-plant.ts';

const SECRET = 'a long test secret';

/** A command as its client keeps it until it is acknowledged. */
export interface KeptCommand {
  readonly path: string;
  readonly body: string;
  readonly eventId: string;
}

/** Somebody with every role of the work, signed in to a Seatwell that may be killed at any moment. */
export class RecordingClient {
  url: string;
  readonly cookie: string;
  readonly shutdownId = uuidv7();
  readonly personId: string;

  private constructor(url: string, cookie: string, personId: string) {
    this.url = url;
    this.cookie = cookie;
    this.personId = personId;
  }

  /** The first visit of an empty installation, and a shutdown to record in. */
  static async begin(url: string): Promise<RecordingClient> {
    const response = await fetch(`${url}/api/v1/first-visit`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        siteName: 'Test site',
        timeZone: 'Europe/Oslo',
        units: 'SI',
        administrator: { name: 'Ada Ministrator', company: 'Owner', email: 'ada@plant.example', password: SECRET },
      }),
    });
    if (response.status !== 200)
      throw new Error(`The first visit answered ${response.status}: ${await response.text()}`);
    const { accountId, personId } = (await response.json()) as { accountId: string; personId: string };
    const cookie = (response.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    const client = new RecordingClient(url, cookie, personId);
    for (const role of ['coordinator', 'engineer', 'technician', 'operations', 'inspector'] as const) {
      const grantId = uuidv7();
      const grant = { grantId, accountId, role, reach: { kind: 'site' as const }, endsOn: null };
      await client.must(client.keepSite('role-granted', grantId, grant));
    }
    await client.must(client.keep('shutdown-opened', client.shutdownId, springShutdown));
    return client;
  }

  keep<T extends ShutdownEventType>(type: T, subjectId: string, payload: Payload<T>, more: object = {}): KeptCommand {
    return this.command(`/api/v1/shutdowns/${this.shutdownId}/commands/${type}`, subjectId, payload, more);
  }

  keepSite<T extends SiteEventType>(type: T, subjectId: string, payload: Payload<T>): KeptCommand {
    return this.command(`/api/v1/site/commands/${type}`, subjectId, payload, {});
  }

  private command(path: string, subjectId: string, payload: unknown, more: object): KeptCommand {
    const eventId = uuidv7();
    const said = { eventId, v: 1, subjectId, deviceTime: new Date().toISOString(), payload, ...more };
    return { path, eventId, body: JSON.stringify(said) };
  }

  /** Sends it; answers the status, or null when the connection broke before an answer. */
  async send(command: KeptCommand, url = this.url): Promise<number | null> {
    return (await this.ask(command, url))?.status ?? null;
  }

  /** Sends it; answers what came back, or null when the connection broke before an answer. */
  async ask({ path, body }: KeptCommand, url = this.url): Promise<{ status: number; body: unknown } | null> {
    try {
      const headers = { 'content-type': 'application/json', cookie: this.cookie };
      const response = await fetch(`${url}${path}`, { method: 'POST', headers, body });
      // Acknowledged is what was read to its end.
      const text = await response.text();
      return { status: response.status, body: text === '' ? null : JSON.parse(text) };
    } catch {
      return null;
    }
  }

  /** A list of rows under one event id. */
  keepList<T extends ShutdownEventType>(
    type: T,
    rows: readonly { jointId: string; makeId: string; versionSeen: number; payload: Payload<T> }[],
  ): KeptCommand {
    const eventId = uuidv7();
    const said = { eventId, v: 1, subjectId: eventId, deviceTime: new Date().toISOString(), mode: 'each', rows };
    return { path: `/api/v1/shutdowns/${this.shutdownId}/lists/${type}`, eventId, body: JSON.stringify(said) };
  }

  async must(command: KeptCommand): Promise<void> {
    const status = await this.send(command);
    if (status !== 200) throw new Error(`${command.path} answered ${status}.`);
  }
}
