/** Evaluates the arithmetic of a substituted formula: numbers, π, √, ^, × / + −, min, max, cos, ln, brackets. */
export function evaluate(text: string): number {
  const tokens = text.match(/\d+(?:\.\d+)?(?:e[+-]?\d+)?|[a-z]+|[π√^×/+−(),-]/g) ?? [];
  let at = 0;
  const peek = () => tokens[at];
  const take = (expected?: string) => {
    const token = tokens[at++];
    if (token === undefined || (expected !== undefined && token !== expected)) {
      throw new Error(`Cannot read "${text}" at token ${at}: ${token}.`);
    }
    return token;
  };
  const list = (): number[] => {
    take('(');
    const values = [sum()];
    while (peek() === ',') {
      take();
      values.push(sum());
    }
    take(')');
    return values;
  };
  const atom = (): number => {
    const token = peek();
    if (token === '(') return list()[0] ?? Number.NaN;
    take();
    if (token === '-' || token === '−') return -atom();
    if (token === 'π') return Math.PI;
    if (token === '√') return Math.sqrt(atom());
    if (token === 'cos') return Math.cos(list()[0] ?? Number.NaN);
    if (token === 'ln') return Math.log(list()[0] ?? Number.NaN);
    if (token === 'max') return Math.max(...list());
    if (token === 'min') return Math.min(...list());
    return Number(token);
  };
  const power = (): number => {
    const base = atom();
    if (peek() !== '^') return base;
    take();
    return base ** power();
  };
  const product = (): number => {
    let value = power();
    while (peek() === '×' || peek() === '/') value = take() === '×' ? value * power() : value / power();
    return value;
  };
  const sum = (): number => {
    let value = product();
    while (peek() === '+' || peek() === '−' || peek() === '-')
      value = take() === '+' ? value + product() : value - product();
    return value;
  };
  const result = sum();
  if (at !== tokens.length) throw new Error(`"${text}" goes on after its end: ${tokens.slice(at).join(' ')}`);
  return result;
}
