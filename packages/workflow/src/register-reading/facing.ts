import type { FlangeSpecification } from '@seatwell/contract';
import type { Cell, Reading } from './reading.ts';
import { parseWords, type Words } from './words.ts';

export type Facing = FlangeSpecification['facing'];

/** Facings of ASME B16.5 and EN 1092-1 in trade words. */
const facings: readonly Words<Facing>[] = [
  {
    code: 'ring-joint',
    label: 'RTJ',
    words: /\b(rtj|r t j|rj|rtjf|ring (type )?joint|ring groove|type j)\b/,
  },
  {
    code: 'raised-face',
    label: 'RF',
    words: /\b(rf|r f|rfsf|raised( face)?|b1|b2|type b)\b/,
  },
  {
    code: 'flat-face',
    label: 'FF',
    words: /\b(ff|f f|flat( face)?|full face|type a)\b/,
  },
  {
    code: 'tongue-and-groove',
    label: 'tongue and groove',
    words: /\b(t g|tg|tongue|groove face|type [cd])\b/,
  },
  {
    code: 'other',
    label: 'other (male and female, O-ring groove, lens)',
    words: /\b(m f|mf|male|female|spigot|recess|o ring|lens|other|type [efgh])\b/,
  },
];

/** Reads a facing: `RF`, `FF`, `RTJ`, `raised face`, EN 1092-1 `type B1`. Words for two facings are asked. */
export function parseFacing(cell: Cell): Reading<Facing> {
  return parseWords(cell, 'facing', facings);
}
