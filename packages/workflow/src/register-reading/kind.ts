import type { JointKind } from '@seatwell/contract';
import { type Cell, plainWords, type Reading, read } from './reading.ts';
import { type OpenWords, parseWords, type Words } from './words.ts';

/** What sits between the two flanges of an insert joint; the words are those of the clamped parts. */
export type InsertType = 'spade' | 'spectacle' | 'spacer' | 'orifice-plate' | 'wafer-valve' | 'tubesheet';

export interface KindValue {
  readonly kind: JointKind;
  /** Known only where the words say what is inserted. */
  readonly insert?: InsertType;
}

const kinds: readonly Words<JointKind>[] = [
  {
    code: 'girth',
    label: 'girth flange',
    words: /\b(girth|body flange|channel|shell cover|floating head|bonnet|dished end)\b/,
    rank: 2,
  },
  {
    code: 'manway',
    label: 'manway or cover',
    words: /\b(manway|man way|manhole|man hole|handhole|hand hole|mw|mh|inspection (port|cover))\b/,
    rank: 2,
  },
  {
    code: 'machine-nozzle',
    label: 'machine nozzle',
    words: /\b(machine|pump|compressor|turbine|blower|expander)\b/,
    rank: 2,
  },
  {
    code: 'isolation-kit',
    label: 'isolation kit',
    words: /\b(isolation (kit|joint|gasket)|insulat(ing|ion) (kit|joint|gasket|flange)|fik|igk)\b/,
    rank: 2,
  },
  {
    code: 'compact-flange',
    label: 'compact flange',
    words: /\bcompact\b/,
    rank: 2,
  },
  {
    code: 'clamp-connector',
    label: 'clamp or hub connector',
    words: /\b(clamp|clamped|hub)\b/,
    rank: 2,
  },
  {
    code: 'lined',
    label: 'lined, GRP or cast iron',
    words: /\b(lined|lining|grp|frp|gre|rtrp|fibreglass|fiberglass|cast iron|ci|gg25|ductile iron)\b/,
    rank: 2,
  },
  {
    code: 'insert',
    label: 'insert joint',
    words:
      /\b(insert|spades?|slip (blind|plate)|line blind|paddle|spectacles?|spec blind|figure 8|fig 8|spacers?|ring spacer|spade spacer|orifice|restriction plate|wafer|lug(ged)? valve|tube ?sheet|sandwich)\b/,
    rank: 3,
  },
  {
    code: 'ring-joint',
    label: 'ring joint',
    words: /\b(rtj|ring (type )?joint)\b/,
    rank: 1,
  },
  {
    code: 'flange-pair',
    label: 'flange pair',
    words:
      /\b(flanges?|flanged( joint| connection| valve)?|pipe joint|nozzle|blind flange|wnrf|weld neck|slip on|spool( piece)?|flg|psv|relief valve|(gate|globe|control) valve)\b/,
    rank: 0,
  },
];

const open: readonly OpenWords<JointKind>[] = [
  { words: /^(blind|blinds)$/, codes: ['insert', 'flange-pair'] },
  {
    words: /\b(butterfly|check|non return|nrv|ball|valve)\b/,
    codes: ['flange-pair', 'insert'],
  },
  {
    words: /\b(exchanger|heat exchanger|reactor|vessel)\b/,
    codes: ['girth', 'flange-pair'],
  },
  { words: /^covers?$/, codes: ['manway', 'girth'] },
];

const inserts: readonly (readonly [RegExp, InsertType])[] = [
  [/\b(spectacles?|spec blind|figure 8|fig 8)\b/, 'spectacle'],
  [/\b(orifice|restriction)\b/, 'orifice-plate'],
  [/\b(wafer|lug(ged)? valve|sandwich)\b/, 'wafer-valve'],
  [/\btube ?sheet\b/, 'tubesheet'],
  [/\b(spades?|slip (blind|plate)|line blind|paddle)\b/, 'spade'],
  [/\bspacers?\b/, 'spacer'],
];

/**
 * Reads the kind of a joint in trade words: `flange`, `spade`, `spec blind`, `orifice`, `wafer valve`, `manway`,
 * `RTJ`, `clamp` … Words that leave it open (`blind`, `butterfly valve`, `exchanger`) are asked.
 */
export function parseKind(cell: Cell): Reading<KindValue> {
  const kind = parseWords(cell, 'kind of joint', kinds, open);
  if (kind.ok !== true) return kind;
  if (kind.value !== 'insert') return read({ kind: kind.value });
  const text = plainWords(cell);
  const insert = inserts.find(([words]) => words.test(text))?.[1];
  return read(insert === undefined ? { kind: 'insert' } : { kind: 'insert', insert });
}
