// Checks an exported record offline:
//   node record-verifier.mjs FILE [--head SEQUENCE:ROOT]… [--signed-head FILE]… [--key PUBLIC.pem|FINGERPRINT]…
// It needs Node alone, so that it can be read in a few minutes, copied anywhere and trusted by itself; who does not
// want to trust it can write the same from this description:
//   leaf of an event or row: SHA-256(0x00 ‖ its bytes), the bytes being the text of `event`, `rows[…]` or `said`
//   node of two: SHA-256(0x01 ‖ left ‖ right); tree, proofs and root as RFC 9162, section 2.1
// A head that was kept elsewhere (`--head`, `--signed-head`) shows whether the record up to it is still what it was.
// A signed head is a checkpoint in a signed note (C2SP tlog-checkpoint, signed-note), signed with Ed25519:
//   seatwell/record/<site>/<stream> ⏎ number of events ⏎ root, base64 ⏎ time <RFC 3339> ⏎   what is signed
//   ⏎ — <first line again> base64(key id ‖ signature) ⏎
//   key id: the first four bytes of SHA-256(first line ‖ 0x0A ‖ 0x01 ‖ the 32 bytes of the public key)
// `--key` is the key that you were told, as a PEM file or as its fingerprint (SHA-256 of the public key in DER). The key
// in the export itself proves nothing: who forges a record can put a key of his own beside it.
// Ends with 0: nothing is wrong; 1: the record is not right, or does not go on from a head that was kept; 2: nothing was
// checked (words or files that cannot be read); 3: a signature is not that of the key told.
import { createHash, createPublicKey, verify } from 'node:crypto';
import { closeSync, createReadStream, existsSync, openSync, readFileSync, readSync } from 'node:fs';
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

/** SHA-256 of a public key in DER, as it is read out and compared. */
export const fingerprintOf = (key) =>
  sha256(key.export({ format: 'der', type: 'spki' }))
    .toString('hex')
    .toUpperCase()
    .match(/../g)
    .join(':');

/**
 * Opens a signed note with a public key.
 * @returns its text; undefined where no signature of the name is this key's; null where one claims to be and is not
 */
export function openNote(note, name, key) {
  const end = note.lastIndexOf('\n\n') + 1;
  const text = note.slice(0, end);
  const raw = key.export({ format: 'der', type: 'spki' }).subarray(-32);
  const keyId = sha256(`${name}\n`, Buffer.from([1]), raw).subarray(0, 4);
  for (const line of note.slice(end + 1).split('\n')) {
    const [, signer, base64] = /^— (\S+) ([A-Za-z0-9+/]+=*)$/.exec(line) ?? [];
    const bytes = Buffer.from(base64 ?? '', 'base64');
    if (signer !== name || !bytes.subarray(0, 4).equals(keyId)) continue;
    return verify(null, Buffer.from(text, 'utf8'), key, bytes.subarray(4)) ? text : null;
  }
  return undefined;
}

/** The head that a signed note speaks of; undefined where its form is not ours. It is to be believed once it was opened. */
function headIn(note) {
  const form =
    /^(seatwell\/record\/([0-9a-f-]{36})\/([0-9a-f-]{36}))\n(0|[1-9]\d{0,14})\n([A-Za-z0-9+/]{43}=)\ntime (\S+)\n\n— /;
  const [, origin, siteId, streamId, sequence, root, time] = form.exec(note) ?? [];
  if (origin === undefined) return undefined;
  const hex = Buffer.from(root, 'base64').toString('hex');
  return { origin, siteId, streamId, sequence: Number(sequence), root: hex, time };
}

/** One signed head, held against the keys that are believed. @returns the head with its signer, or what is wrong */
export function checkSignedHead(note, keys, what = 'The signed head') {
  const head = headIn(note);
  if (!head) return { wrong: `${what} is not in the form of one: something was left out, added or changed.` };
  for (const key of keys) {
    const text = openNote(note, head.origin, key);
    if (text === null)
      return { wrong: `${what} was changed after it was signed: its signature by ${fingerprintOf(key)} does not fit.` };
    if (text !== undefined) return { ...head, signer: fingerprintOf(key) };
  }
  return {
    wrong: `${what} is not signed by ${keys.map(fingerprintOf).join(' or ')}, but by another key.`,
    byAnother: true,
  };
}

/** Keys as told: PEM files, or fingerprints of keys that the export carries. */
function toldKeys(words, carried) {
  return words.map((word) => {
    if (existsSync(word)) {
      const key = createPublicKey(readFileSync(word, 'utf8'));
      if (key.asymmetricKeyType !== 'ed25519') throw new Error(`${word} holds no Ed25519 key.`);
      return key;
    }
    const digits = word.replaceAll(':', '').toUpperCase();
    if (!/^[0-9A-F]{64}$/.test(digits))
      throw new Error(`--key takes a file, which ${word} is not, or a fingerprint of 64 hex digits.`);
    const found = carried.find((key) => fingerprintOf(key).replaceAll(':', '') === digits);
    if (!found)
      throw new SignatureError(`The key ${word} is none of those that the export carries: give it as a file.`);
    return found;
  });
}

class SignatureError extends Error {}

/**
 * Believes signed heads, or says why not.
 * @param about `{ siteId, streamId, head, signedHead, keys }` of the export
 * @returns heads to hold the record against, and what to tell
 */
function signedHeads(about, files, keyWords) {
  const carried = (about.keys ?? []).map(({ publicKey }) => createPublicKey(publicKey));
  const told = toldKeys(keyWords, carried);
  const wrong = [];
  const heads = [];
  const notes = [];
  for (const file of files) {
    const head = checkSignedHead(readFileSync(file, 'utf8'), told, `The signed head ${file}`);
    if (head.wrong) wrong.push(head.wrong);
    else if (head.streamId !== about.streamId || (about.siteId ?? head.siteId) !== head.siteId)
      wrong.push(`The signed head ${file} is of the record ${head.streamId}, and the export of ${about.streamId}.`);
    else {
      heads.push(head);
      notes.push(`It goes on from the head of ${head.sequence} events signed at ${head.time} by ${head.signer}.`);
    }
  }
  if (typeof about.signedHead === 'string') {
    const own = checkSignedHead(about.signedHead, told.length > 0 ? told : carried, 'The head in the export');
    if (own.wrong) {
      // After a change of keys the export is signed by the next one, and the head that was kept by the one before.
      if (files.length === 0 || !own.byAnother) wrong.push(own.wrong);
      else notes.push(own.wrong);
    } else if (own.streamId !== about.streamId || own.sequence !== about.head.sequence || own.root !== about.head.root)
      wrong.push('The signed head in the export is another than the head beside it.');
    else notes.push(`Its own head was signed at ${own.time} by ${own.signer}.`);
    if (told.length === 0)
      notes.push(
        'No key was told (--key): one that comes with an export proves nothing until its fingerprint is compared.',
      );
  } else if (files.length === 0 && keyWords.length > 0) wrong.push('The export carries no signed head.');
  if (wrong.length > 0) throw new SignatureError(wrong.join('\n'));
  return { heads, notes };
}

/** A whole record may be larger than what fits into memory: its beginning, with the whole first line. */
function beginningOf(file) {
  const descriptor = openSync(file, 'r');
  const bytes = Buffer.alloc(1024 * 1024);
  const length = readSync(descriptor, bytes);
  closeSync(descriptor);
  return bytes.toString('utf8', 0, length);
}

const USAGE =
  'node record-verifier.mjs FILE [--head SEQUENCE:ROOT]… [--signed-head FILE]… [--key PUBLIC.pem|FINGERPRINT]…';

function wordsOf(words) {
  const said = { files: [], heads: [], signed: [], keys: [] };
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at];
    if (!word.startsWith('--')) {
      said.files.push(word);
      continue;
    }
    at += 1;
    const value = words[at];
    const [, sequence, root] = /^(\d+):([0-9a-f]{64})$/.exec(value ?? '') ?? [];
    if (word === '--head' && root !== undefined) said.heads.push({ sequence: Number(sequence), root });
    else if (word === '--head') throw new Error('--head takes SEQUENCE:ROOT, the root in 64 hex digits.');
    else if (word === '--signed-head' && value !== undefined) said.signed.push(value);
    else if (word === '--key' && value !== undefined) said.keys.push(value);
    else throw new Error(USAGE);
  }
  if (said.files.length !== 1) throw new Error(USAGE);
  if (said.signed.length > 0 && said.keys.length === 0)
    throw new Error('--signed-head needs --key: the key that you were told, as a file or as its fingerprint.');
  return said;
}

async function main(words) {
  const { files, heads, signed, keys } = wordsOf(words);
  const [file] = files;
  const start = beginningOf(file);
  const joint = start.slice(0, 200).includes('"seatwell-joint-record"') && JSON.parse(readFileSync(file, 'utf8'));
  const about = joint || JSON.parse(start.split('\n', 1)[0] || '{}');
  const believed = signedHeads(about, signed, keys);
  const kept = [...heads, ...believed.heads];
  const lines = () => createInterface({ input: createReadStream(file), crlfDelay: Number.POSITIVE_INFINITY });
  const checked = joint ? checkJointRecord(joint, kept) : await checkRecord(lines(), kept);
  return Array.isArray(checked) ? checked : { ...checked, notes: believed.notes };
}

if (
  process.argv[1] !== undefined &&
  import.meta.url.endsWith('/record-verifier.mjs') &&
  process.argv[1].endsWith('record-verifier.mjs')
) {
  const result = await main(process.argv.slice(2)).catch((error) => {
    console.error(error.message);
    process.exit(error instanceof SignatureError ? 3 : 2);
  });
  if (Array.isArray(result)) {
    for (const problem of result.slice(0, 50)) console.error(problem);
    console.error(`${result.length} wrong.`);
    process.exit(1);
  }
  console.log(`${result.events} events give the head ${result.root}. Nothing is wrong.`);
  for (const note of result.notes) console.log(note);
}
