import type { Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';

/**
 * A fact may be entered from paper with a photo of it as its evidence; a decision is made on what is seen now.
 * @throws Problem `bad-input` for a decision, and for a photo that this site does not hold
 */
export async function requirePaperForm(
  tx: Transaction,
  siteId: string,
  kind: 'fact' | 'decision',
  paperForm: string | null,
): Promise<void> {
  if (paperForm === null) return;
  if (kind === 'decision')
    throw new Problem('bad-input', 'Only facts are entered from a paper form. Make this decision on the screen.');
  const { rows } = await tx.query('SELECT FROM stored_file WHERE site_id = $1 AND hash = $2', [siteId, paperForm]);
  if (rows.length === 0)
    throw new Problem('bad-input', `The site holds no file ${paperForm}. Send the photo of the form first.`);
}
