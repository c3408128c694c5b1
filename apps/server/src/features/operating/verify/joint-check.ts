import { createHash, randomBytes } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { foldHistory, type JointState, type RecordedEvent } from '@seatwell/workflow';
import { shownMake } from '../../joints/shown-make.ts';
import type { Findings } from './findings.ts';
import { asRecorded, type Row, type VouchedEvent, type VouchedRow } from './vouched-event.ts';

/** What the projection rows leave out is undefined in the fold. */
const plain = (state: JointState): unknown => JSON.parse(JSON.stringify(state));

/**
 * Folds a random share of the joints anew from the stored bytes and holds their projections against it. Which ones is
 * drawn for each run, before anything is read, so that one pass over the record is enough.
 */
export class JointCheck {
  readonly #seed = randomBytes(16);
  readonly #share: number;
  readonly #findings: Findings;
  readonly #histories = new Map<string, RecordedEvent[]>();
  /** batch events by id, whose rows may be about a drawn joint */
  readonly #batches = new Map<string, { readonly event: VouchedEvent; readonly sequence: number }>();
  readonly #seen = new Set<string>();

  /** @param share of the joints to draw, above 0 to 1 */
  constructor(share: number, findings: Findings) {
    this.#share = share;
    this.#findings = findings;
  }

  get drawn(): number {
    return this.#seen.size;
  }

  #isDrawn(jointId: string): boolean {
    if (this.#share >= 1) return true;
    const hash = createHash('sha256').update(this.#seed).update(jointId).digest();
    return hash.readUInt32BE(0) / 2 ** 32 < this.#share;
  }

  #tell(jointId: string, event: RecordedEvent): void {
    if (!this.#isDrawn(jointId)) return;
    const history = this.#histories.get(jointId) ?? [];
    history.push(event);
    this.#histories.set(jointId, history);
  }

  event(sequence: number, event: VouchedEvent): void {
    if (event.rowCount > 0) this.#batches.set(event.eventId, { event, sequence });
    if (event.jointId) this.#tell(event.jointId, asRecorded(event, sequence, event));
  }

  batchRow(eventId: string, row: VouchedRow): void {
    const batch = this.#batches.get(eventId);
    if (batch) this.#tell(row.jointId, asRecorded(batch.event, batch.sequence, row));
  }

  /** A joint's projection; all events have been told. */
  projection(row: Row): void {
    const jointId = row['joint_id'] ?? '';
    if (!this.#isDrawn(jointId)) return;
    this.#seen.add(jointId);
    const history = this.#histories.get(jointId) ?? [];
    const state = foldHistory(history.sort((one, other) => one.sequence - other.sequence));
    if (!state) {
      this.#findings.add(`Joint ${row['tag']} is in the register, and no event lists it.`);
      return;
    }
    if (!isDeepStrictEqual(JSON.parse(row['state'] ?? 'null'), plain(state)))
      this.#findings.add(`Joint ${row['tag']} (${jointId}) folds to another state than the register shows.`);
    const stage = shownMake(state)?.stage ?? 'planned';
    if (row['stage'] !== stage)
      this.#findings.add(`Joint ${row['tag']} stands as ${row['stage']} in the register and folds to ${stage}.`);
    if (Number(row['version']) !== state.version)
      this.#findings.add(`Joint ${row['tag']} has version ${row['version']} and folds to ${state.version}.`);
  }

  finish(): void {
    for (const [jointId, history] of this.#histories)
      if (!this.#seen.has(jointId) && foldHistory(history))
        this.#findings.add(`Joint ${jointId} is on record and not in the register.`);
  }
}
