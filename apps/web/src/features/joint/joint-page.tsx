import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams, useSearch } from '@tanstack/react-router';
import { choicesQuery, jointQuery } from '../../app/reads.ts';
import { textOf } from '../../app/search-params.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import styles from './joint.module.css';
import { JointActions } from './joint-actions.tsx';
import { JointFacts } from './joint-facts.tsx';
import { JointHead } from './joint-head.tsx';
import { JointHistory } from './joint-history.tsx';
import { JointPlan } from './joint-plan.tsx';
import { JointSides } from './joint-sides.tsx';
import { PassesTable } from './passes-table.tsx';
import { shownMake, stateOf } from './shown-make.ts';
import { TargetPanel } from './target-panel.tsx';
import { VoidedNotice } from './voided-notice.tsx';

/** One joint: where its make stands, what it is tightened to and why, and everything that happened to it. */
export function JointPage() {
  const text = useText('joint');
  const shutdownId = useShutdownId();
  const { jointId = '' } = useParams({ strict: false });
  const search = useSearch({ strict: false }) as Record<string, unknown>;
  const { data: page } = useSuspenseQuery(jointQuery(shutdownId, jointId));
  const { data: choices } = useSuspenseQuery(choicesQuery(shutdownId));
  const make = shownMake(page, textOf(search.make));
  if (!make) {
    return (
      <>
        <JointHead page={page} make={undefined} />
        <VoidedNotice page={page} />
        <JointActions page={page} make={undefined} choices={choices} />
        <EmptyState title={text('no-make')}>
          <p>{text('no-make-detail')}</p>
        </EmptyState>
        <JointHistory page={page} make={undefined} />
      </>
    );
  }
  const state = stateOf(page, make);
  return (
    <>
      <JointHead page={page} make={make} />
      <VoidedNotice page={page} />
      <JointActions page={page} make={make} choices={choices} />
      <div className={styles.page}>
        <div className={styles.left}>
          <JointPlan page={page} make={make} state={state} />
          <JointFacts page={page} make={make} />
        </div>
        <div className={styles.right}>
          <TargetPanel page={page} make={make} />
          <div className={styles.below}>
            <PassesTable make={make} state={state} />
            <JointHistory page={page} make={make} />
          </div>
          <JointSides page={page} make={make} />
        </div>
      </div>
    </>
  );
}
