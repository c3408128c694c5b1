import { RULES } from '@seatwell/workflow';

const sentences: ReadonlyMap<string, string> = new Map(RULES.map((rule) => [rule.code, rule.sentence]));

/** Rules by what they demand, one after the other; what is no rule of the catalogue stays as its code. */
export function ruleSentences(codes: readonly string[]): string {
  return codes.map((code) => sentences.get(code) ?? code.replaceAll('-', ' ')).join(' ');
}
