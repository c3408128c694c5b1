import { leftToRightStretches, withoutReadingOrder, withReadingOrder } from '@seatwell/contract';

const MARKS = { start: '\u2066', end: '\u2069' };

/**
 * Keeps tags, numbers, sizes and units of a page that is written from right to left readable from left to right.
 * It watches what React puts on the page instead of leaving it to each component, since one tag that was forgotten
 * sends a crew to another flange. React compares what it rendered, not what stands on the page, so marks in the page
 * do not disturb it. What is copied goes without marks: a tag is found again.
 * @returns ends the watch
 */
export function keepReadingOrder(root: HTMLElement): () => void {
  const watch = new MutationObserver((changes) => {
    const parents = new Set<Node>();
    for (const { type, target, addedNodes } of changes) {
      if (type === 'characterData') addParent(parents, target);
      else for (const added of addedNodes) for (const text of textsIn(added)) addParent(parents, text);
    }
    for (const parent of parents) mark(parent);
  });
  for (const parent of new Set([...textsIn(root)].map((text) => text.parentNode))) if (parent) mark(parent);
  watch.observe(root, { subtree: true, childList: true, characterData: true });
  root.addEventListener('copy', copyWithoutMarks);
  return () => {
    watch.disconnect();
    root.removeEventListener('copy', copyWithoutMarks);
    for (const text of textsIn(root)) write(text, withoutReadingOrder(text.data));
  };
}

function addParent(parents: Set<Node>, text: Node) {
  if (text.parentNode) parents.add(text.parentNode);
}

function textsIn(node: Node): Text[] {
  if (node instanceof Text) return [node];
  const walker = document.createTreeWalker(node, NodeFilter.SHOW_TEXT);
  const found: Text[] = [];
  while (walker.nextNode()) if (walker.currentNode instanceof Text) found.push(walker.currentNode);
  return found;
}

/** Marks the texts of one element; neighbours are read as one, as `{count} × {thread}` is three. */
function mark(parent: Node) {
  if (parent instanceof HTMLTextAreaElement || parent instanceof HTMLStyleElement) return;
  let neighbours: Text[] = [];
  for (const child of [...parent.childNodes, null]) {
    if (child instanceof Text) neighbours.push(child);
    else if (neighbours.length > 0) {
      markTogether(neighbours);
      neighbours = [];
    }
  }
}

function markTogether(texts: readonly Text[]) {
  const plain = texts.map((text) => withoutReadingOrder(text.data));
  const [only] = texts;
  if (only && texts.length === 1) return write(only, withReadingOrder(plain[0] ?? ''));
  const stretches = leftToRightStretches(plain.join(''));
  let offset = 0;
  for (const [index, text] of texts.entries()) {
    const own = plain[index] ?? '';
    let marked = '';
    for (let at = 0; at <= own.length; at += 1) {
      // At a seam an end belongs to the text before it, a start to the text after it.
      if (at > 0 && stretches.some(({ end }) => end === offset + at)) marked += MARKS.end;
      if (at < own.length && stretches.some(({ start }) => start === offset + at)) marked += MARKS.start;
      marked += own.charAt(at);
    }
    write(text, marked);
    offset += own.length;
  }
}

// A text that is marked already is left alone, or the watch would never come to rest.
function write(text: Text, data: string) {
  if (text.data !== data) text.data = data;
}

function copyWithoutMarks(event: ClipboardEvent) {
  const selected = document.getSelection()?.toString() ?? '';
  if (selected === '' || selected === withoutReadingOrder(selected)) return;
  event.clipboardData?.setData('text/plain', withoutReadingOrder(selected));
  event.preventDefault();
}
