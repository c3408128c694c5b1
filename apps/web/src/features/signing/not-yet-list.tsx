import { useRuleWords } from '../../app/use-rule-words.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';
import { ruleItem } from '../work/rules-problem.ts';
import type { NotYet } from './sign-row.ts';
import styles from './signing.module.css';

/** Joints that cannot be signed, each with every failed rule, its remedy and who clears it. */
export function NotYetList({ title, rows }: { title: string; rows: readonly NotYet[] }) {
  const text = useText('signing');
  const trade = useTrade();
  const ruleWords = useRuleWords();
  const format = useFormat();
  return (
    <Notice kind="attention" title={title} live>
      <ul className={styles.notYet}>
        {rows.map(({ row, failed, problem }) => (
          <li key={row.jointId}>
            <strong>{row.tag}</strong>
            {problem !== null && <p>{problem}</p>}
            {failed.map((rule) => {
              const item = ruleItem(trade, ruleWords, format, rule);
              return (
                <p key={rule.rule}>
                  {item.message} {item.remedy} {item.who !== undefined && text('cleared-by', { who: item.who })}
                </p>
              );
            })}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
