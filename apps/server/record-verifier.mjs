// Checks an exported record offline: `node record-verifier.mjs FILE [--head SEQUENCE:ROOT]…`.
// It needs Node alone, so that it can be read in a few minutes, copied anywhere and trusted by itself; who does not
// want to trust it can write the same from this description:
//   leaf of an event or row: SHA-256(0x00 ‖ its bytes), the bytes being the text of `event`, `rows[…]` or `said`
//   node of two: SHA-256(0x01 ‖ left ‖ right); tree, proofs and root as RFC 9162, section 2.1
// A head that was kept elsewhere (`--head`) shows whether the record up to it is still what it was.
import { createHash } from 'node:crypto';
import { closeSync, createReadStream, openSync, readFileSync, readSync } from 'node:fs';
import { createInterface } from 'node:readline';

const sha256 = (...parts) => {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest();
};
const leafOf = (text) => sha256(Buffer.from([0]), Buffer.from(text, 'utf8'));
const nodeOf = (left, right) => sha256(Buffer.from([1]), left, right);

/** A tree that grows leaf by leaf: roots of its perfect subtrees, the largest first. */
class Tree {
  #peaks = [];
  size = 0;

  add(leaf) {
    let carried = leaf;
    for (let rest = this.size; rest % 2 === 1; rest = Math.floor(rest / 2))
      carried = nodeOf(this.#peaks.pop(), carried);
    this.#peaks.push(carried);
    this.size += 1;
  }

  get root() {
    const peaks = [...this.#peaks];
    let root = peaks.pop() ?? sha256();
    while (peaks.length > 0) root = nodeOf(peaks.pop(), root);
    return root.toString('hex');
  }
}

/** Root that a proof leads to (RFC 9162, section 2.1.3.2); undefined where its length does not fit. */
function rootByProof(leaf, index, size, proof) {
  let place = index;
  let last = size - 1;
  let hash = leaf;
  for (const text of proof) {
    if (last === 0) return undefined;
    const sibling = Buffer.from(text, 'hex');
    if (place % 2 === 1 || place === last) {
      hash = nodeOf(sibling, hash);
      while (place % 2 === 0 && place !== 0) {
        place = Math.floor(place / 2);
        last = Math.floor(last / 2);
      }
    } else {
      hash = nodeOf(hash, sibling);
    }
    place = Math.floor(place / 2);
    last = Math.floor(last / 2);
  }
  return last === 0 ? hash.toString('hex') : undefined;
}

/** Checks a whole record, line by line. */
export async function checkRecord(lines, keptHeads = []) {
  const problems = [];
  const tree = new Tree();
  let head;
  let end;
  let rows = 0;
  const seen = new Set();
  for await (const line of lines) {
    if (line === '') continue;
    const said = JSON.parse(line);
    if (head === undefined) {
      if (said.format !== 'seatwell-record' || said.formatVersion !== 1) return ['This is no record of form 1.'];
      head = { ...said.head, streamId: said.streamId };
      continue;
    }
    if (said.end !== undefined) {
      end = said.end;
      continue;
    }
    const event = JSON.parse(said.event);
    tree.add(leafOf(said.event));
    if (said.sequence !== tree.size)
      problems.push(`Line of event ${event.eventId}: number ${said.sequence}, not ${tree.size}.`);
    if (event.streamId !== head.streamId) problems.push(`Event ${event.eventId} is of another stream.`);
    if (seen.has(event.eventId)) problems.push(`Event ${event.eventId} is there twice.`);
    seen.add(event.eventId);
    const list = new Tree();
    for (const row of said.rows) list.add(leafOf(row));
    rows += list.size;
    if (list.size !== event.rowCount || (event.rowsRoot ?? list.root) !== list.root)
      problems.push(`Event ${event.eventId}: its ${list.size} rows are not the ${event.rowCount} that it vouches for.`);
    for (const kept of keptHeads)
      if (kept.sequence === tree.size && kept.root !== tree.root)
        problems.push(`Up to event ${kept.sequence} the record gives ${tree.root}, and the head kept is ${kept.root}.`);
  }
  if (head === undefined) return ['The file is empty.'];
  if (end !== tree.size || head.sequence !== tree.size)
    problems.push(`The record is cut short: ${tree.size} events of ${head.sequence}.`);
  if (head.root !== tree.root) problems.push(`The events give ${tree.root}, and the head says ${head.root}.`);
  for (const kept of keptHeads)
    if (kept.sequence > tree.size)
      problems.push(`A head kept counts ${kept.sequence} events, and there are ${tree.size}.`);
  return problems.length > 0 ? problems : { events: tree.size, rows, root: tree.root };
}

/** Checks the record of one joint against the head in it, and that head against those that were kept. */
export function checkJointRecord(record, keptHeads = []) {
  const problems = [];
  const { head, events, jointId } = record;
  let last = 0;
  for (const { sequence, event: text, proof, rows } of events) {
    const event = JSON.parse(text);
    if (sequence <= last) problems.push(`Event ${event.eventId} is out of order.`);
    last = sequence;
    if (rootByProof(leafOf(text), sequence - 1, head.sequence, proof) !== head.root)
      problems.push(`Event ${event.eventId} is not proven to be number ${sequence} under the head.`);
    if (event.jointId !== jointId && rows.length === 0)
      problems.push(`Event ${event.eventId} is not about this joint.`);
    for (const { row, said, proof: rowProof } of rows) {
      if (JSON.parse(said).jointId !== jointId) problems.push(`A row of event ${event.eventId} is of another joint.`);
      if (rootByProof(leafOf(said), row, event.rowCount, rowProof) !== event.rowsRoot)
        problems.push(`Row ${row} is not proven to hang under event ${event.eventId}.`);
    }
  }
  for (const kept of keptHeads)
    if (kept.sequence === head.sequence && kept.root !== head.root)
      problems.push(`The head in the record is ${head.root}, and the one kept is ${kept.root}.`);
    else if (kept.sequence !== head.sequence)
      problems.push(
        `The head kept counts ${kept.sequence} events, and the record’s ${head.sequence}: ask for a whole record, which can be held against any head.`,
      );
  return problems.length > 0 ? problems : { events: events.length, root: head.root };
}

/** A whole record may be larger than what fits into memory. */
function beginningOf(file) {
  const descriptor = openSync(file, 'r');
  const bytes = Buffer.alloc(200);
  const length = readSync(descriptor, bytes);
  closeSync(descriptor);
  return bytes.toString('utf8', 0, length);
}

async function main(words) {
  const heads = [];
  const files = [];
  for (let at = 0; at < words.length; at += 1) {
    if (words[at] !== '--head') files.push(words[at]);
    else {
      const [, sequence, root] = /^(\d+):([0-9a-f]{64})$/.exec(words[at + 1] ?? '') ?? [];
      if (root === undefined) return ['--head takes SEQUENCE:ROOT, the root in 64 hex digits.'];
      heads.push({ sequence: Number(sequence), root });
      at += 1;
    }
  }
  const [file] = files;
  if (files.length !== 1) return ['node record-verifier.mjs FILE [--head SEQUENCE:ROOT]…'];
  if (beginningOf(file).includes('"seatwell-joint-record"'))
    return checkJointRecord(JSON.parse(readFileSync(file, 'utf8')), heads);
  return checkRecord(createInterface({ input: createReadStream(file), crlfDelay: Number.POSITIVE_INFINITY }), heads);
}

if (
  process.argv[1] !== undefined &&
  import.meta.url.endsWith('/record-verifier.mjs') &&
  process.argv[1].endsWith('record-verifier.mjs')
) {
  const result = await main(process.argv.slice(2)).catch((error) => [error.message]);
  if (Array.isArray(result)) {
    for (const problem of result.slice(0, 50)) console.error(problem);
    console.error(`${result.length} wrong.`);
    process.exit(1);
  }
  console.log(`${result.events} events give the head ${result.root}. Nothing is wrong.`);
}
