import { ask, type Cell, plainText, quoted, type Reading, read, refuse } from './reading.ts';

/**
 * Reads a criticality by the levels of the shutdown: `A`, `Crit. A`, `category b`. Other words (`high`, `1`) are
 * asked, because what they stand for is the site's decision.
 *
 * @param cell the cell
 * @param levels the levels of the shutdown, highest first
 */
export function parseCriticality(cell: Cell, levels: readonly string[] = ['A', 'B', 'C']): Reading<string> {
  const text = plainText(cell);
  if (text === '') return refuse('criticality-missing', `The criticality is empty. Enter one of ${levels.join(', ')}.`);
  const bare = text.replace(/^(criticality|crit|category|cat|level|lvl|class|risk)[ .:-]*/i, '').trim();
  const level = levels.find((entry) => [text, bare].some((word) => word.toLowerCase() === entry.toLowerCase()));
  if (level !== undefined) return read(level);
  if (
    /^(very )?(high|medium|med|low|normal|standard|critical|non[ -]?critical|[1-5]|[IVX]{1,3}|h|m|l|yes|no|y|n)$/i.test(
      bare,
    )
  ) {
    return ask(
      'criticality-unclear',
      `Which criticality does ${quoted(cell)} mean?`,
      levels.map((value) => ({ value, label: value })),
    );
  }
  return refuse(
    'criticality-unknown',
    `${quoted(cell)} is no criticality of this shutdown. Use one of ${levels.join(', ')}.`,
  );
}
