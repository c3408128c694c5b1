/**
 * A label broken between words into lines of at most `most` characters; a longer word keeps a line of its own.
 * A drawing has no room to wrap by itself, and labels are longer in some languages than in others.
 */
export function labelLines(label: string, most: number): readonly string[] {
  const lines: string[] = [];
  for (const word of label.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
