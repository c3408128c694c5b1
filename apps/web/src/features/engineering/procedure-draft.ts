import type { ProcedureContent } from '@seatwell/contract';
import { type BoltsMissing, boltsMissing } from './procedure-bolts.ts';

/** A procedure to begin with: common practice, for the engineer to change. */
export const startingContent: ProcedureContent = {
  numbering: 'clockwise',
  pattern: 'legacy',
  tools: 1,
  group: null,
  passPercents: [30, 70, 100],
  finalRound: true,
  relaxationPass: false,
  method: 'hydraulic-wrench',
  lubricantId: '',
  appliesTo: { kinds: [], ratings: [], gasketFamilies: [], leastBolts: 4, mostBolts: 64 },
  policy: {
    area: 'tensile',
    minimumBoltUtilisation: 0.2,
    maximumBoltUtilisation: 0.7,
    scatter_percent: 20,
    targetBoltStress_MPa: null,
    source: '',
  },
  cautions: [],
};

export type ProcedureMissing =
  | BoltsMissing
  | 'code-needed'
  | 'title-needed'
  | 'lubricant-needed'
  | 'coverage-needed'
  | 'passes-rise'
  | 'utilisation-order'
  | 'bolts-order'
  | 'policy-source-needed';

/** What a draft still lacks, the first of it. */
export function procedureMissing(code: string, title: string, content: ProcedureContent): ProcedureMissing | undefined {
  const { passPercents, appliesTo, policy } = content;
  if (code.trim() === '') return 'code-needed';
  if (title.trim() === '') return 'title-needed';
  if (content.lubricantId === '') return 'lubricant-needed';
  if (content.method === 'tensioner' && !content.coverage) return 'coverage-needed';
  const bolts = boltsMissing(content);
  if (bolts) return bolts;
  const rises = passPercents.every((percent, index) => index === 0 || percent > (passPercents[index - 1] ?? 0));
  if (!rises || passPercents.at(-1) !== 100) return 'passes-rise';
  if (appliesTo.leastBolts > appliesTo.mostBolts) return 'bolts-order';
  if (policy.minimumBoltUtilisation >= policy.maximumBoltUtilisation) return 'utilisation-order';
  if (policy.source.trim() === '') return 'policy-source-needed';
  return undefined;
}

/** `30 70 100`, `30, 70, 100` or `30/70/100` as numbers; undefined where a part is none. */
export function readPercents(typed: string): number[] | undefined {
  const parts = typed.split(/[\s,;/%]+/).filter((part) => part !== '');
  const numbers = parts.map(Number);
  return numbers.length > 0 && numbers.every((value) => Number.isFinite(value)) ? numbers : undefined;
}
