import { createHash } from 'node:crypto';

const nodeHash = (left: Uint8Array, right: Uint8Array): Buffer =>
  createHash('sha256')
    .update(Buffer.from([1]))
    .update(left)
    .update(right)
    .digest();

/**
 * Proofs that leaves are in the tree over all of them (RFC 9162 section 2.1.3): for each leaf the siblings on the way to
 * the root, the lowest first.
 * @param leaves hashes of all leaves, in their order
 * @param indexes of the leaves to prove, from 0
 */
export function inclusionProofs(leaves: readonly Buffer[], indexes: readonly number[]): Map<number, Buffer[]> {
  const proofs = new Map(indexes.map((index) => [index, [] as Buffer[]]));
  const places = new Map(indexes.map((index) => [index, index]));
  for (let level = leaves; level.length > 1; ) {
    for (const [index, place] of places) {
      const sibling = level[place % 2 === 0 ? place + 1 : place - 1];
      // The last node of an odd level rises without a partner.
      if (sibling) proofs.get(index)?.push(sibling);
      places.set(index, Math.floor(place / 2));
    }
    const next: Buffer[] = [];
    for (let place = 0; place < level.length; place += 2) {
      const left = level[place] as Buffer;
      const right = level[place + 1];
      next.push(right ? nodeHash(left, right) : left);
    }
    level = next;
  }
  return proofs;
}
