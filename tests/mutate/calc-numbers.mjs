// Finds the numbers of a formula file that a mutation changes: constants and exponents, not texts, comments, indices,
// plausibility ranges or digits of a message.
const NOT_A_FORMULA = [
  /\b(min|max): -?[\d._]+/, // plausibility range of an input
  /\.(toFixed|toPrecision|slice|at|round)\(/, // digits of a text
  /\.size < \d/, // bound of a memory
  /\? 1 : 0|\?\? [01]\b(?!\.)|=== [01]\b|> 0\b|< 0\b|!== 0\b/, // switches and absent values
  /\.length (>|<|>=|<=) \d/, // whole numbers, which 1 % does not reach
  /^\s*readonly \w+\??:/, // a type
  /^\s*import\b|^export \{|const COATING_LIMITS/,
];

/** Blanks strings, templates, patterns and comments, keeping every offset. */
function blankTexts(code) {
  const blank = (text) => text.replace(/[^\n]/g, ' ');
  const texts =
    /\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`|(?<=[(,=:]\s*)\/(?:[^/\\\n[]|\\.|\[[^\]\n]*\])+\/[a-z]*/g;
  return code.replace(texts, blank);
}

/** @returns {{ start: number, text: string, line: number }[]} */
export function formulaNumbers(code) {
  const bare = blankTexts(code);
  const found = [];
  for (const match of bare.matchAll(/(?<![\w.$[])\d[\d_]*(?:\.\d+)?(?:e-?\d+)?\b/g)) {
    const value = Number(match[0].replaceAll('_', ''));
    const lineStart = bare.lastIndexOf('\n', match.index) + 1;
    const line = bare.slice(lineStart, bare.indexOf('\n', match.index));
    // 1e-9 and the like are tolerances of a comparison or an iteration.
    if (value < 1e-5 || NOT_A_FORMULA.some((pattern) => pattern.test(line))) continue;
    found.push({ start: match.index, text: match[0], line: code.slice(0, match.index).split('\n').length });
  }
  return found;
}

/** The code with the number at an offset changed by 1 %. */
export function changed(code, start) {
  const number = formulaNumbers(code).find((one) => one.start === start);
  if (number === undefined) throw new Error(`There is no formula number at ${start}.`);
  const value = Number(number.text.replaceAll('_', '')) * 1.01;
  return `${code.slice(0, start)}${value}${code.slice(start + number.text.length)}`;
}
