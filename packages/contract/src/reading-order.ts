/** A stretch of a text: from `start` up to, without, `end`. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

// From the first Latin letter or digit, with its sign or bracket, to the last before another script or an Arabic comma.
const RUN =
  /[(]?[-+±−≤≥~]?[\p{Script=Latin}\p{Nd}\p{No}](?:[^\p{Script=Arabic}،؛؟]*[\p{Script=Latin}\p{Nd}\p{No})"”°%′″])?/gu;
// In "DN 150 · PN 40 · 8 براغٍ" the 8 belongs to what follows.
const LISTED_NUMBER = /(\s*[,·]\s+)[\d.,]+$/u;
// In "الجولة 1: 30 %" the pass comes first, then its share.
const FIGURE_AFTER_FIGURE = /(?<=\p{Nd}):\s+(?=[-+±−]?\p{Nd})/gu;
const ARABIC_FOLLOWS = /^\s*\p{Script=Arabic}/u;
const LATIN_SENTENCE = /^\s*[^\p{Script=Arabic}،؛؟]*\p{Script=Latin}[^\p{Script=Arabic}،؛؟]*[.?…]\s*$/u;

const LEFT_TO_RIGHT_ISOLATE = '\u2066';
const POP_ISOLATE = '\u2069';

/**
 * The stretches of a text from right to left that read from left to right: tags, numbers with their units, sizes
 * (12 × M24), names in Latin letters. Without marks the bidirectional algorithm shows `10-01-SP10018` as
 * `SP10018-10-01` there (Unicode Standard Annex 9, rules W2 to N2).
 */
export function leftToRightStretches(text: string): readonly Stretch[] {
  if (LATIN_SENTENCE.test(text)) {
    const start = text.search(/\S/);
    return [{ start, end: text.trimEnd().length }];
  }
  return [...text.matchAll(RUN)].flatMap(({ 0: run, index }) => {
    const surplus = run.split('(').length - run.split(')').length;
    // A bracket whose partner stands outside the stretch stays outside with it.
    const start = surplus > 0 && run.startsWith('(') ? index + 1 : index;
    const end = surplus < 0 && run.endsWith(')') ? index + run.length - 1 : index + run.length;
    const seams = [...text.slice(start, end).matchAll(FIGURE_AFTER_FIGURE)].map((seam) => ({
      start: start + seam.index,
      end: start + seam.index + seam[0].length,
    }));
    const listed = ARABIC_FOLLOWS.test(text.slice(end)) ? LISTED_NUMBER.exec(text.slice(start, end)) : null;
    if (listed) seams.push({ start: start + listed.index, end: start + listed.index + (listed[1]?.length ?? 0) });
    return [...seams, { start: end, end }].map((seam, at) => ({ start: seams[at - 1]?.end ?? start, end: seam.start }));
  });
}

/** The text with its stretches from left to right between isolate marks (LRI, PDI). */
export function withReadingOrder(text: string): string {
  let marked = '';
  let at = 0;
  for (const { start, end } of leftToRightStretches(text)) {
    marked += `${text.slice(at, start)}${LEFT_TO_RIGHT_ISOLATE}${text.slice(start, end)}${POP_ISOLATE}`;
    at = end;
  }
  return marked + text.slice(at);
}

/** The text as it was before its stretches were marked. */
export const withoutReadingOrder = (text: string): string => text.replaceAll(/[\u2066-\u2069]/g, '');
