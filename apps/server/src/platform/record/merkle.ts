import { createHash } from 'node:crypto';

/**
 * The Merkle tree of a stream as RFC 9162 section 2.1 defines it: leaves are SHA-256(0x00 ‖ bytes), nodes
 * SHA-256(0x01 ‖ left ‖ right). The frontier holds the roots of the perfect subtrees, largest first; with the
 * number of leaves it is all that is needed to append and to give the root.
 */
export type Frontier = readonly Buffer[];

const sha256 = (...parts: readonly Uint8Array[]): Buffer => {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest();
};
const LEAF = Buffer.from([0]);
const NODE = Buffer.from([1]);

/** Hash of a leaf's bytes. */
export const leafHash = (bytes: Uint8Array): Buffer => sha256(LEAF, bytes);
const nodeHash = (left: Uint8Array, right: Uint8Array): Buffer => sha256(NODE, left, right);

/** The frontier after one more leaf; `size` is the number of leaves before it. */
export function appendLeaf(frontier: Frontier, size: number, leaf: Buffer): Buffer[] {
  const next = [...frontier];
  let carried = leaf;
  for (let rest = size; rest % 2 === 1; rest = Math.floor(rest / 2)) {
    const left = next.pop();
    if (!left) throw new Error(`The frontier of a tree of ${size} leaves is too short: the stream head is damaged.`);
    carried = nodeHash(left, carried);
  }
  next.push(carried);
  return next;
}

/** Root of the tree that the frontier stands for; an empty tree's root is SHA-256 of nothing. */
export function frontierRoot(frontier: Frontier): Buffer {
  const peaks = [...frontier];
  let root = peaks.pop();
  if (!root) return sha256();
  for (let left = peaks.pop(); left; left = peaks.pop()) root = nodeHash(left, root);
  return root;
}

/** Root over leaves computed from scratch: what an independent check compares with. */
export function rootOfLeaves(leaves: readonly Buffer[]): Buffer {
  let frontier: Buffer[] = [];
  leaves.forEach((leaf, size) => {
    frontier = appendLeaf(frontier, size, leaf);
  });
  return frontierRoot(frontier);
}
