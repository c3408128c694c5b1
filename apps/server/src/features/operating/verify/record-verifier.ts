import { createHash } from 'node:crypto';
import { bytesOf, valuesOfRow } from '../../../platform/backup/copy-text.ts';
import { leafHash } from '../../../platform/record/merkle.ts';
import { Findings } from './findings.ts';
import { JointCheck } from './joint-check.ts';
import { PersonCheck } from './person-check.ts';
import { StreamCheck } from './stream-check.ts';
import {
  batchColumnsThatDisagree,
  columnsThatDisagree,
  type Row,
  type VouchedEvent,
  type VouchedRow,
} from './vouched-event.ts';

export interface Verified {
  readonly events: number;
  readonly rows: number;
  readonly streams: number;
  readonly jointsFolded: number;
  readonly names: number;
  readonly files: number;
  /** how many things are wrong; nothing is right until this is 0 */
  readonly problems: number;
  readonly findings: readonly string[];
}

/**
 * Holds a record against itself, from the stored bytes: heads and batches recomputed, columns against bytes, a share
 * of the joints folded anew, names against their commitments, files against their hashes. Rows are told table by
 * table in the order of the tables' names, each table in the order of its key.
 */
export class RecordVerifier {
  readonly #findings = new Findings();
  readonly #streams = new StreamCheck(this.#findings);
  readonly #persons: PersonCheck;
  readonly #joints: JointCheck;
  #files = 0;

  readonly #tellers: Readonly<Record<string, (row: Row) => void>> = {
    account: (row) => this.#persons.account(row),
    event: (row) => this.#event(row),
    event_row: (row) => this.#batchRow(row),
    joint: (row) => this.#joints.projection(row),
    person: (row) => this.#persons.person(row),
    stored_file: (row) => this.#file(row),
    stream_head: (row) => this.#streams.head(row),
  };

  /**
   * @param share of the joints to fold anew
   * @param migrations that the data has seen
   */
  constructor(share: number, migrations: readonly string[]) {
    this.#joints = new JointCheck(share, this.#findings);
    this.#persons = new PersonCheck(this.#findings, migrations);
  }

  /** The tables that it wants to be told, in their order. */
  get tables(): readonly string[] {
    return Object.keys(this.#tellers);
  }

  /** One row in the text form of COPY. */
  row(table: string, columns: readonly string[], bytes: Buffer): void {
    const values = valuesOfRow(bytes);
    this.#tellers[table]?.(Object.fromEntries(columns.map((column, index) => [column, values[index] ?? null])));
  }

  #event(row: Row): void {
    const canonical = bytesOf(row['canonical'] ?? '');
    const event = said<VouchedEvent>(canonical);
    if (!event) {
      this.#findings.add(`The bytes of event ${row['event_id']} cannot be read.`);
      return;
    }
    const differing = columnsThatDisagree(row, event);
    if (differing.length > 0)
      this.#findings.add(`Event ${row['event_id']}: ${differing.join(', ')} say something else than its bytes.`);
    this.#streams.event(row, leafHash(canonical), event);
    this.#joints.event(Number(row['sequence']), event);
    this.#persons.event(event);
  }

  #batchRow(row: Row): void {
    const canonical = bytesOf(row['canonical'] ?? '');
    const about = said<VouchedRow>(canonical);
    if (!about) {
      this.#findings.add(`The bytes of row ${row['row']} of event ${row['event_id']} cannot be read.`);
      return;
    }
    const differing = batchColumnsThatDisagree(row, about);
    if (differing.length > 0)
      this.#findings.add(
        `Row ${row['row']} of event ${row['event_id']}: ${differing.join(', ')} say something else than its bytes.`,
      );
    this.#streams.batchRow(row, leafHash(canonical));
    this.#joints.batchRow(row['event_id'] ?? '', about);
  }

  #file(row: Row): void {
    this.#files += 1;
    const hash = createHash('sha256')
      .update(bytesOf(row['content'] ?? ''))
      .digest('hex');
    if (hash !== row['hash']) this.#findings.add(`File ${row['hash']} has other bytes: they hash to ${hash}.`);
  }

  finish(): Verified {
    this.#streams.finish();
    this.#joints.finish();
    return {
      events: this.#streams.events,
      rows: this.#streams.rows,
      streams: this.#streams.streams,
      jointsFolded: this.#joints.drawn,
      names: this.#persons.names,
      files: this.#files,
      problems: this.#findings.count,
      findings: this.#findings.shown,
    };
  }
}

function said<T>(canonical: Buffer): T | null {
  try {
    return JSON.parse(canonical.toString('utf8')) as T;
  } catch {
    return null;
  }
}
