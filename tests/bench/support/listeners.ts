import { Agent, type ClientRequest, get } from 'node:http';

const agent = new Agent({ keepAlive: false, maxSockets: Number.POSITIVE_INFINITY });

/** Streams of live updates, and when each heard of which version. */
export class Listeners {
  readonly #open: ClientRequest[] = [];
  /** instants of performance.now() by version */
  readonly heard = new Map<number, number[]>();

  get count(): number {
    return this.#open.length;
  }

  /** Opens some streams, a few at a time, and waits until each has told the head as it is. */
  async open(count: number, address: (index: number) => string, cookie: string): Promise<void> {
    const AT_ONCE = 50;
    for (let from = 0; from < count; from += AT_ONCE) {
      const part = Array.from({ length: Math.min(AT_ONCE, count - from) }, (_, index) => address(from + index));
      await Promise.all(part.map((url) => this.#listen(url, cookie)));
    }
  }

  #listen(url: string, cookie: string): Promise<void> {
    return new Promise((resolve, reject) => {
      const request = get(url, { agent, headers: { cookie } }, (response) => {
        if (response.statusCode !== 200) reject(new Error(`A stream answered ${response.statusCode}.`));
        response.setEncoding('utf8');
        let rest = '';
        response.on('data', (text: string) => {
          const at = performance.now();
          const lines = (rest + text).split('\n');
          rest = lines.pop() ?? '';
          for (const line of lines) {
            if (!line.startsWith('id: ')) continue;
            const version = Number(line.slice(4));
            const instants = this.heard.get(version) ?? [];
            instants.push(at);
            this.heard.set(version, instants);
            resolve();
          }
        });
        response.on('error', () => {});
      });
      request.on('error', reject);
      this.#open.push(request);
    });
  }

  /** Waits until every stream has heard of a version. @throws Error after a minute */
  async untilHeard(version: number): Promise<void> {
    for (let waited_ms = 0; (this.heard.get(version)?.length ?? 0) < this.count; waited_ms += 20) {
      if (waited_ms > 60_000)
        throw new Error(
          `${this.heard.get(version)?.length ?? 0} of ${this.count} streams heard of version ${version}.`,
        );
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  }

  close(): void {
    for (const request of this.#open) request.destroy();
  }
}
