// Widths of strong letters in the table's size, rem, each rounded up. Head and rows have fonts of two sizes, so that
// `ch` would give them two tracks.
const widths: readonly (readonly [letters: RegExp, width: number])[] = [
  [/[MW@%]/, 0.88],
  [/[A-Z]/, 0.68],
  [/[-.,:;'/|()i l]/, 0.42],
];
const usual = 0.58;
const leastWidth = 5;
const padding = 1;

const widthOf = (letter: string): number => widths.find(([letters]) => letters.test(letter))?.[1] ?? usual;

type Tagged = readonly { readonly tag: string }[];

// A block of rows is measured once, however long the list has become.
const longestOf = new WeakMap<Tagged, number>();

function longestIn(rows: Tagged): number {
  const known = longestOf.get(rows);
  if (known !== undefined) return known;
  const longest = Math.max(0, ...rows.map(({ tag }) => [...tag].reduce((sum, letter) => sum + widthOf(letter), 0)));
  longestOf.set(rows, longest);
  return longest;
}

/** A grid track that holds the tag of each of these rows whole: a tag that is cut names no joint. */
export function trackOfTags(blocks: readonly Tagged[]): string {
  const longest = Math.max(leastWidth, ...blocks.map(longestIn));
  return `${(longest + padding).toFixed(2)}rem`;
}
