import type { GasketFamilyCode } from '@seatwell/contract';
import type { Cell, Reading } from './reading.ts';
import { type OpenWords, parseWords, type Words } from './words.ts';

// Rank: the construction goes before its filler or facing, the sheet before its binder.
const families: readonly Words<GasketFamilyCode>[] = [
  {
    code: 'isolation-kit',
    label: 'isolation kit',
    words: /\b(isolation|isolating|insulat(ing|ion)|fik|igk)\b/,
    rank: 4,
  },
  {
    code: 'spiral-wound',
    label: 'spiral wound',
    words: /\b(swg|spw|spiral|spirally|spir|cgi)\b/,
    rank: 3,
  },
  {
    code: 'grooved-metal',
    label: 'grooved metal',
    words: /\b(kamm ?profile|camprofile|kam ?profile|grooved|serrated metal)\b/,
    rank: 3,
  },
  {
    code: 'corrugated-metal',
    label: 'corrugated metal',
    words: /\b(corrugated|cmg)\b/,
    rank: 3,
  },
  {
    code: 'jacketed',
    label: 'metal jacketed',
    words: /\b(jacketed|jacket|dj|djg)\b/,
    rank: 3,
  },
  {
    code: 'flat-metal',
    label: 'flat metal',
    words: /\b((flat|solid|plain) metal|metal flat|soft iron washer|copper|alumin(i)?um|lead)\b/,
    rank: 3,
  },
  {
    code: 'ring-joint',
    label: 'ring joint',
    words: /\b(rtj|rj|ring (type )?joint|octagonal|oval|oct|(r|rx|bx) ?\d{1,3})\b|^ring( gasket)?$/,
    rank: 3,
  },
  {
    code: 'eptfe-sheet',
    label: 'expanded PTFE',
    words: /\b(eptfe|expanded ptfe|e ptfe)\b/,
    rank: 2,
  },
  {
    code: 'ptfe-sheet',
    label: 'PTFE sheet',
    words: /\b(ptfe|teflon)\b/,
    rank: 1,
  },
  {
    code: 'graphite-sheet',
    label: 'graphite sheet',
    words: /\b(graphite|graphoil)\b/,
    rank: 1,
  },
  {
    code: 'fibre-sheet',
    label: 'fibre sheet',
    words: /\b(cnaf|caf|saf|naf|fibre|fiber|aramid|non asbestos|compressed( sheet)?|cns|csf)\b/,
    rank: 2,
  },
  {
    code: 'elastomer',
    label: 'elastomer',
    words: /\b(rubber|elastomer|epdm|neoprene|nbr|nitrile|fkm|viton|butyl|silicone|o ring)\b/,
    rank: 0,
  },
  {
    code: 'none',
    label: 'none',
    words: /^(none|no gasket|nil|n a|metal to metal|without)$/,
    rank: 5,
  },
];

const open: readonly OpenWords<GasketFamilyCode>[] = [
  {
    words: /\b(sheet|soft|cut|full face|ibc)\b/,
    codes: ['fibre-sheet', 'ptfe-sheet', 'graphite-sheet', 'elastomer'],
  },
  {
    words: /\b(metal|metallic|steel|ss)\b/,
    codes: ['spiral-wound', 'grooved-metal', 'flat-metal', 'ring-joint'],
  },
];

/**
 * Reads a gasket family in trade words: `SWG`, `spiral wound 316/graphite`, `kammprofile`, `CNAF`, `PTFE`, `R23` …
 * The construction decides, not its filler; words that fit several families are asked.
 */
export function parseGasketFamily(cell: Cell): Reading<GasketFamilyCode> {
  // An envelope gasket is a PTFE skin around a core of fibre or elastomer: neither word alone describes it.
  const table = /envelope/i.test(String(cell)) ? families.filter((line) => (line.rank ?? 0) > 2) : families;
  return parseWords(cell, 'gasket family', table, [
    { words: /envelope/, codes: ['ptfe-sheet', 'fibre-sheet', 'elastomer'] },
    ...open,
  ]);
}
