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

/** A grid track that holds each of these tags whole: a tag that is cut names no joint. */
export function trackOfTags(tags: readonly string[]): string {
  const longest = Math.max(
    leastWidth,
    ...tags.map((tag) => [...tag].reduce((sum, letter) => sum + widthOf(letter), 0)),
  );
  return `${(longest + padding).toFixed(2)}rem`;
}
