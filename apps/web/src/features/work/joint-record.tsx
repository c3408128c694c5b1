import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import type { Job } from './job.ts';
import styles from './work.module.css';

/** What was recorded of the make, as whoever checks has to compare it with the joint. */
export function JointRecord({ job: { state, page } }: { job: Job }) {
  const text = useText('work');
  const trade = useTrade();
  const format = useFormat();
  const { fitted } = state;
  const name = (personId: string) => page.names[personId] ?? text('name-erased');
  const items = [
    ...(fitted
      ? [
          {
            name: text('gasket'),
            value: [
              trade.word('family', fitted.gasketFamily),
              trade.word('purpose', fitted.gasketPurpose),
              fitted.batch === null ? null : text('batch-was', { batch: fitted.batch }),
            ]
              .filter(Boolean)
              .join(' · '),
          },
          { name: text('bolting'), value: fitted.boltGrade },
          { name: text('lubricant'), value: fitted.lubricant },
        ]
      : []),
    ...state.passes
      .filter((pass) => pass.finished)
      .map((pass) => ({
        name: text('pass-number', { pass: format.count(pass.pass) }),
        value: [
          `${format.number(pass.set.asEntered.value, decimalsOf(pass.set.asEntered.value))} ${pass.set.asEntered.unit}`,
          page.toolTags[pass.toolId] ?? '',
          pass.performedBy.map(name).join(', '),
          format.dayTime(pass.endedAt),
        ]
          .filter(Boolean)
          .join(' · '),
      })),
    ...(state.tightAt === null ? [] : [{ name: text('tight-since'), value: format.dayTime(state.tightAt) }]),
  ];
  return (
    <dl className={styles.record}>
      {items.map((item) => (
        <div key={item.name}>
          <dt>{item.name}</dt>
          <dd>{item.value}</dd>
        </div>
      ))}
    </dl>
  );
}

const decimalsOf = (value: number): number => Math.min(3, (String(value).split('.')[1] ?? '').length);
