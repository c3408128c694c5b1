import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseSync } from 'vite';
import { describe, expect, test } from 'vitest';

const sources = fileURLToPath(new URL('../../apps/web/src/', import.meta.url));

// Attributes that somebody reads or hears.
const readAttributes = new Set([
  'aria-label',
  'aria-description',
  'aria-placeholder',
  'aria-valuetext',
  'alt',
  'placeholder',
  'title',
  'label',
  'hint',
  'caption',
  'description',
  'meaning',
]);

interface Node {
  readonly type: string;
  readonly start: number;
  readonly [key: string]: unknown;
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';
}

function children(node: Node): Node[] {
  return Object.values(node)
    .flatMap((value) => (Array.isArray(value) ? value : [value]))
    .filter(isNode);
}

// A letter makes it language; signs such as × or ▾ are drawing.
const isLanguage = (text: unknown) => typeof text === 'string' && /\p{L}/u.test(text);

/** Words written inside an expression that ends up as text: 'a', `b`, x ? 'c' : 'd', x && 'e'. */
function literalsOf(node: unknown): { text: string; start: number }[] {
  if (!isNode(node)) return [];
  switch (node.type) {
    case 'Literal':
      return isLanguage(node.value) ? [{ text: String(node.value), start: node.start }] : [];
    case 'TemplateLiteral':
      return (node.quasis as { value: { cooked: string } }[])
        .filter((quasi) => isLanguage(quasi.value.cooked))
        .map((quasi) => ({ text: quasi.value.cooked, start: node.start }));
    case 'JSXExpressionContainer':
      return literalsOf(node.expression);
    case 'ParenthesizedExpression':
      return literalsOf(node.expression);
    case 'ConditionalExpression':
      return [...literalsOf(node.consequent), ...literalsOf(node.alternate)];
    case 'LogicalExpression':
      return [...literalsOf(node.left), ...literalsOf(node.right)];
    case 'BinaryExpression':
      return node.operator === '+' ? [...literalsOf(node.left), ...literalsOf(node.right)] : [];
    default:
      return [];
  }
}

/** Every piece of language in the JSX of a source, with its line. */
function literalTexts(code: string): string[] {
  const parsed = parseSync('source.tsx', code);
  if (parsed.errors.length > 0) throw new Error(parsed.errors.map((error) => error.message).join('; '));
  const found: { text: string; start: number }[] = [];
  const visit = (node: Node): void => {
    if (node.type === 'JSXText' && isLanguage(node.value)) {
      found.push({ text: String(node.value).trim(), start: node.start });
    }
    if (node.type === 'JSXElement' || node.type === 'JSXFragment') {
      for (const child of node.children as Node[]) {
        if (child.type === 'JSXExpressionContainer') found.push(...literalsOf(child));
      }
    }
    if (node.type === 'JSXAttribute' && readAttributes.has((node.name as { name: string }).name)) {
      found.push(...literalsOf(node.value));
    }
    children(node).forEach(visit);
  };
  visit(parsed.program as unknown as Node);
  return found.map(({ text, start }) => `line ${code.slice(0, start).split('\n').length}: ${text}`);
}

describe('the words of the web app stand in its catalogues', () => {
  // The gallery shows the parts to developers, is never shipped and speaks no other language.
  const files = readdirSync(sources, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('.tsx') && !/\.test\.tsx$|^gallery\//.test(file));

  test('there are sources to look at', () => {
    expect(files.length).toBeGreaterThan(10);
  });

  test.each(files)('%s has no words of its own', (file) => {
    expect(literalTexts(readFileSync(sources + file, 'utf8'))).toEqual([]);
  });
});

describe('the check sees', () => {
  test.each([
    ['text between tags', '<p>Hello</p>'],
    ['text in braces', "<p>{'Hello'}</p>"],
    ['text in a choice', "<p>{done ? 'Done' : text('open')}</p>"],
    ['text behind a condition', "<p>{done && 'Done'}</p>"],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: source text to be parsed
    ['a template', '<p>{`${count} joints`}</p>'],
    ['a label for the ear', '<button aria-label="Close" />'],
    ['a placeholder in braces', "<input placeholder={'Search'} />"],
    ['a title', '<span title="More" />'],
    ['words of another script', '<p>التالي</p>'],
  ])('%s', (_, jsx) => {
    expect(literalTexts(`const part = ${jsx};`)).toHaveLength(1);
  });

  test.each([
    ['texts from the catalogue', "<p title={text('more')}>{text('hello')}</p>"],
    ['signs', '<span aria-hidden="true">×</span>'],
    ['attributes that nobody reads', '<p className="wide" data-tone="stop" role="status" />'],
    ['values', '<p>{count} · {name}</p>'],
  ])('but lets pass %s', (_, jsx) => {
    expect(literalTexts(`const part = ${jsx};`)).toEqual([]);
  });
});
