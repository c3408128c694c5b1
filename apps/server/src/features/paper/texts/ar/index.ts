import type { PaperWords } from '../sheet-texts.ts';
import { handOut } from './hand-out.ts';
import { handOver } from './hand-over.ts';
import { recordForm } from './record-form.ts';
import { report } from './report.ts';
import { shared } from './shared.ts';
import { sheet } from './sheet.ts';
import { tags } from './tags.ts';
import { targetLimits } from './target-limits.ts';
import { testSheet } from './test-sheet.ts';
import { words } from './words.ts';

/** Every word that is printed on the paper in Arabic. */
export const AR = {
  ...shared,
  ...sheet,
  words,
  targetLimits,
  handOut,
  tags,
  recordForm,
  testSheet,
  handOver,
  report,
} satisfies PaperWords;
