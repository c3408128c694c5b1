import type { Database } from '../database/pool.ts';

export interface Head {
  readonly siteId: string;
  readonly streamId: string;
  readonly sequence: number;
  readonly root: string;
  readonly changedAt: string;
}

type Listener = (head: Head) => void;

const EVERY_MS = 500;

/**
 * Watches the heads of streams for the browsers of this process: one small query twice a second, whatever the number
 * of listeners. Each replica watches for itself, so that nothing but the database is shared.
 */
export class HeadWatch {
  readonly #db: Database;
  readonly #listeners = new Map<string, Set<Listener>>();
  readonly #known = new Map<string, Head>();
  #timer: NodeJS.Timeout | null = null;
  #asking = false;

  constructor(db: Database) {
    this.#db = db;
  }

  /** Calls back with the head as it is, and then with each new one; the answer ends it. */
  listen(streamId: string, listener: Listener): () => void {
    const listeners = this.#listeners.get(streamId) ?? new Set();
    listeners.add(listener);
    this.#listeners.set(streamId, listeners);
    const known = this.#known.get(streamId);
    if (known) listener(known);
    this.#timer ??= setInterval(() => void this.#ask(), EVERY_MS);
    void this.#ask();
    return () => {
      listeners.delete(listener);
      if (listeners.size > 0) return;
      this.#listeners.delete(streamId);
      this.#known.delete(streamId);
      if (this.#listeners.size === 0 && this.#timer) {
        clearInterval(this.#timer);
        this.#timer = null;
      }
    };
  }

  stop(): void {
    if (this.#timer) clearInterval(this.#timer);
    this.#timer = null;
    this.#listeners.clear();
  }

  async #ask(): Promise<void> {
    if (this.#asking || this.#listeners.size === 0) return;
    this.#asking = true;
    try {
      const { rows } = await this.#db.query<{
        site_id: string;
        stream_id: string;
        sequence: number;
        root: Buffer;
        changed_at: Date;
      }>({
        name: 'watch-heads',
        text: 'SELECT site_id, stream_id, sequence, root, changed_at FROM stream_head WHERE stream_id = ANY($1::uuid[])',
        values: [[...this.#listeners.keys()]],
      });
      for (const row of rows) this.#tell(row);
    } catch {
      // The next round asks again; a browser without news for long reconnects by itself.
    } finally {
      this.#asking = false;
    }
  }

  #tell(row: { site_id: string; stream_id: string; sequence: number; root: Buffer; changed_at: Date }): void {
    if (this.#known.get(row.stream_id)?.sequence === row.sequence) return;
    const head: Head = {
      siteId: row.site_id,
      streamId: row.stream_id,
      sequence: row.sequence,
      root: row.root.toString('hex'),
      changedAt: row.changed_at.toISOString(),
    };
    this.#known.set(row.stream_id, head);
    for (const listener of this.#listeners.get(row.stream_id) ?? []) listener(head);
  }
}
