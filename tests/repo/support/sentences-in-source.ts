import { readFileSync } from 'node:fs';
import { parseSync } from 'vite';
import { sourceFiles } from './source-files.ts';

/** A sentence as a source writes it, its values as `{{}}`; several where it has alternatives. */
export interface SentenceInSource {
  readonly file: string;
  readonly code: string;
  readonly sentence: string;
}

interface Node {
  readonly type: string;
  readonly [part: string]: unknown;
}

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && 'type' in value;

function walk(node: unknown, visit: (node: Node) => void): void {
  if (Array.isArray(node)) for (const each of node) walk(each, visit);
  if (!isNode(node)) return;
  visit(node);
  for (const [part, value] of Object.entries(node)) if (part !== 'type') walk(value, visit);
}

const nameOf = (node: unknown): string => (isNode(node) && typeof node.name === 'string' ? node.name : '');

/** What a text expression can come out as; constants are looked up by their names. */
function texts(node: unknown, constants: ReadonlyMap<string, Node>, depth = 0): string[] {
  const inner = (each: unknown) => texts(each, constants, depth + 1);
  if (!isNode(node) || depth > 5) return ['{{}}'];
  if (node.type === 'Literal') return [String(node.value)];
  if (node.type === 'ConditionalExpression') return [...inner(node.consequent), ...inner(node.alternate)];
  if (node.type === 'ParenthesizedExpression') return inner(node.expression);
  if (node.type === 'BinaryExpression' && isText(node))
    return inner(node.left).flatMap((left) => inner(node.right).map((right) => left + right));
  if (node.type === 'TemplateLiteral') {
    const quasis = node.quasis as readonly { readonly value: { readonly cooked: string } }[];
    return (node.expressions as readonly unknown[]).reduce<string[]>(
      (found, expression, index) =>
        found.flatMap((text) =>
          inner(expression).map((value) => text + value + (quasis[index + 1]?.value.cooked ?? '')),
        ),
      [quasis[0]?.value.cooked ?? ''],
    );
  }
  const constant = node.type === 'Identifier' ? constants.get(nameOf(node)) : undefined;
  return constant ? inner(constant) : ['{{}}'];
}

const isText = (node: unknown): node is Node => {
  if (!isNode(node)) return false;
  if (node.type === 'Literal') return typeof node.value === 'string';
  if (node.type === 'ConditionalExpression') return isText(node.consequent) && isText(node.alternate);
  if (node.type === 'BinaryExpression') return node.operator === '+' && (isText(node.left) || isText(node.right));
  return node.type === 'TemplateLiteral';
};

/**
 * Every sentence below a folder that goes with a code: objects with `code` and `message`, and calls that take both.
 * @param calls functions that take a code and its sentence, with the place of the code among their arguments
 * @param parts constants that hold a part of a sentence; any other name in a sentence is a value
 */
export function sentencesIn(
  folder: string,
  calls: Readonly<Record<string, number>>,
  parts: readonly string[],
): readonly SentenceInSource[] {
  const programs = sourceFiles(folder).map((file) => ({
    file,
    program: parseSync(file, readFileSync(file, 'utf8')).program,
  }));
  const shared = new Map<string, Node>();
  const constantsOf = (program: unknown, into: Map<string, Node>) =>
    walk(program, (node) => {
      const name = nameOf(node.id);
      if (node.type === 'VariableDeclarator' && parts.includes(name) && isText(node.init)) into.set(name, node.init);
    });
  for (const { program } of programs)
    walk(program, (node) => {
      if (node.type === 'ExportNamedDeclaration') constantsOf(node.declaration, shared);
    });
  return programs.flatMap(({ file, program }) => {
    const constants = new Map(shared);
    constantsOf(program, constants);
    const found: SentenceInSource[] = [];
    const add = (code: unknown, message: unknown) => {
      for (const each of texts(code, constants))
        for (const sentence of texts(message, constants)) found.push({ file, code: each, sentence });
    };
    walk(program, (node) => {
      if (node.type === 'ObjectExpression') {
        const part = (name: string) =>
          (node.properties as readonly Node[]).find((property) => nameOf(property.key) === name)?.value;
        if (part('code') !== undefined && part('message') !== undefined) add(part('code'), part('message'));
      }
      if (node.type !== 'CallExpression' && node.type !== 'NewExpression') return;
      const first = calls[nameOf(node.callee)];
      const given = node.arguments as readonly unknown[];
      if (first !== undefined && given.length > first + 1) add(given[first], given[first + 1]);
    });
    return found;
  });
}
