import { appendLeaf, frontierRoot } from '../../../platform/record/merkle.ts';
import type { Findings } from './findings.ts';
import type { Row } from './vouched-event.ts';

/** A Merkle tree that grows by leaves hashed anew. */
class Tree {
  #frontier: Buffer[] = [];
  size = 0;

  add(leaf: Buffer): void {
    this.#frontier = appendLeaf(this.#frontier, this.size, leaf);
    this.size += 1;
  }

  get root(): string {
    return frontierRoot(this.#frontier).toString('hex');
  }
}

/** Recomputes the head of every stream, and the root of every batch, from the stored bytes. */
export class StreamCheck {
  readonly #streams = new Map<string, Tree>();
  /** batches whose rows are still to come, by event: how many, and their root */
  readonly #batches = new Map<string, { readonly rows: number; readonly root: string | null; readonly tree: Tree }>();
  readonly #heads = new Set<string>();
  readonly #findings: Findings;
  events = 0;
  rows = 0;

  constructor(findings: Findings) {
    this.#findings = findings;
  }

  get streams(): number {
    return this.#heads.size;
  }

  /** An event, in the order of its stream; `leaf` is hashed from its bytes. */
  event(row: Row, leaf: Buffer, batch: { readonly rowCount: number; readonly rowsRoot: string | null }): void {
    const streamId = row['stream_id'] ?? '';
    const tree = this.#streams.get(streamId) ?? new Tree();
    this.#streams.set(streamId, tree);
    tree.add(leaf);
    this.events += 1;
    if (Number(row['sequence']) !== tree.size)
      this.#findings.add(
        `Stream ${streamId}: event ${row['event_id']} has number ${row['sequence']}, not ${tree.size}.`,
      );
    if (row['leaf'] !== `\\x${leaf.toString('hex')}`)
      this.#findings.add(`Stream ${streamId}: the leaf of event ${row['event_id']} is not the hash of its bytes.`);
    if (batch.rowCount > 0)
      this.#batches.set(row['event_id'] ?? '', { rows: batch.rowCount, root: batch.rowsRoot, tree: new Tree() });
  }

  /** A row of a batch, in its order. */
  batchRow(row: Row, leaf: Buffer): void {
    this.rows += 1;
    const batch = this.#batches.get(row['event_id'] ?? '');
    if (!batch) {
      this.#findings.add(`A row hangs under event ${row['event_id']}, which vouches for none.`);
      return;
    }
    if (Number(row['row']) !== batch.tree.size)
      this.#findings.add(`Event ${row['event_id']}: a row has number ${row['row']}, not ${batch.tree.size}.`);
    if (row['leaf'] !== `\\x${leaf.toString('hex')}`)
      this.#findings.add(`Event ${row['event_id']}: the leaf of row ${row['row']} is not the hash of its bytes.`);
    batch.tree.add(leaf);
  }

  /** A stream's head as it is stored. */
  head(row: Row): void {
    const streamId = row['stream_id'] ?? '';
    this.#heads.add(streamId);
    const tree = this.#streams.get(streamId) ?? new Tree();
    if (Number(row['sequence']) !== tree.size)
      this.#findings.add(`Stream ${streamId}: its head counts ${row['sequence']} events, and there are ${tree.size}.`);
    if (row['root'] !== `\\x${tree.root}`)
      this.#findings.add(`Stream ${streamId}: its head is ${row['root']?.slice(2)}, and its events give ${tree.root}.`);
  }

  finish(): void {
    for (const streamId of this.#streams.keys())
      if (!this.#heads.has(streamId)) this.#findings.add(`Stream ${streamId} has events and no head.`);
    for (const [eventId, { rows, root, tree }] of this.#batches)
      if (tree.size !== rows || tree.root !== root)
        this.#findings.add(
          `Event ${eventId} vouches for ${rows} rows with root ${root}; there are ${tree.size} with ${tree.root}.`,
        );
  }
}
