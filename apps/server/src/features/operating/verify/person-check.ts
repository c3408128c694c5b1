import { bytesOf } from '../../../platform/backup/copy-text.ts';
import { nameCommitment } from '../../../platform/record/commitment.ts';
import type { Findings } from './findings.ts';
import type { Row, VouchedEvent } from './vouched-event.ts';

/** Addresses of erased persons: reserved never to reach anybody (RFC 2606). */
const ERASED_ADDRESS = '@erased.invalid';

/** The migration since which erasing a person takes the e-mail address as well. */
const ERASES_ADDRESSES = '20261125130000_erase_address_with_name';

/** Names against the commitments on record, and nothing left of those who were erased. */
export class PersonCheck {
  readonly #commitments = new Map<string, string>();
  readonly #erased = new Set<string>();
  readonly #addresses = new Map<string, string[]>();
  readonly #findings: Findings;
  readonly #erasesAddresses: boolean;
  names = 0;

  /** @param migrations that the data has seen */
  constructor(findings: Findings, migrations: readonly string[]) {
    this.#findings = findings;
    this.#erasesAddresses = migrations.includes(ERASES_ADDRESSES);
  }

  event({ type, subjectId, payload }: VouchedEvent): void {
    if (type === 'person-erased') this.#erased.add(subjectId);
    if (type !== 'person-registered') return;
    const { personId, nameCommitment: commitment } = payload as { personId: string; nameCommitment: string };
    this.#commitments.set(personId, commitment);
  }

  account(row: Row): void {
    if (!this.#erasesAddresses) return;
    const personId = row['person_id'] ?? '';
    this.#addresses.set(personId, [...(this.#addresses.get(personId) ?? []), row['email'] ?? '']);
  }

  person(row: Row): void {
    const personId = row['person_id'] ?? '';
    if (this.#erased.has(personId)) {
      const left = (this.#addresses.get(personId) ?? []).filter((address) => !address.endsWith(ERASED_ADDRESS));
      if (row['name'] !== null || row['badge'] !== null || left.length > 0)
        this.#findings.add(`Person ${personId} was erased, and a name, badge or e-mail address is still there.`);
      return;
    }
    const { name, name_salt: salt } = row;
    this.names += 1;
    if (!name || !salt || nameCommitment(name, bytesOf(salt)) !== this.#commitments.get(personId))
      this.#findings.add(`The name of person ${personId} is not the one that the record committed to.`);
  }
}
