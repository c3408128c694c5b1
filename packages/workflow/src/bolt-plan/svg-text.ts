/** Attributes of an element; undefined ones are left out, numbers are rounded to a hundredth. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** The fonts of the drawings: the web's family first, then the one shipped for print, then those of other scripts. */
export const drawingFont =
  "'Atkinson Hyperlegible Next Variable','Atkinson Hyperlegible Next','Noto Sans Devanagari','Noto Sans Arabic','Noto Sans',sans-serif";

// Print looks for a letter that the first typeface lacks in any typeface of the computer, not in the next of the list.
const SCRIPTS = [
  { letters: /\p{Script=Arabic}/u, font: "'Noto Sans Arabic'" },
  { letters: /\p{Script=Devanagari}/u, font: "'Noto Sans Devanagari'" },
] as const;

const fontFor = (text: string): string | undefined => {
  const script = SCRIPTS.find(({ letters }) => letters.test(text));
  return script && `${script.font},${drawingFont}`;
};

/** One SVG element with presentation attributes only: style rules and variables fail silently in print. */
export function element(name: string, attributes: Attributes, content = ''): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? rounded(value) : escapeXml(String(value))}"`)
    .join('');
  return content === '' ? `<${name}${written}/>` : `<${name}${written}>${content}</${name}>`;
}

/** A line of text whose middle stands at (x, y). */
export function centredText(
  text: string,
  at: { readonly x: number; readonly y: number },
  size: number,
  attributes: Attributes,
): string {
  // Renderers disagree on dominant-baseline, so the baseline is moved by a third of the size instead.
  return element(
    'text',
    {
      x: at.x,
      y: at.y + size * 0.355,
      'text-anchor': 'middle',
      'font-family': fontFor(text),
      'font-size': size,
      ...attributes,
    },
    escapeXml(text),
  );
}

/** Makes a text safe inside XML. */
export function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

/** A coordinate as written into the drawing. Throws on what is not a number, which would vanish silently. */
export function rounded(value: number): string {
  if (!Number.isFinite(value)) {
    throw new RangeError(`A coordinate of the drawing is ${value}; every size must be a finite number.`);
  }
  return String(Math.round(value * 100) / 100);
}
