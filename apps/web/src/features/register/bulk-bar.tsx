import type { ChoicesAnswer, JointRow } from '@seatwell/contract';
import { lazy, Suspense, useState } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useMay } from '../../app/session.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import type { RegisterSearch } from './register-search.ts';
import { type Selection, selectedNow } from './selection.ts';
import { fetchSelection } from './use-register.ts';

const AssignDialog = lazy(() => import('./assign-dialog.tsx').then((m) => ({ default: m.AssignDialog })));
const ProcedureDialog = lazy(() => import('./procedure-dialog.tsx').then((m) => ({ default: m.ProcedureDialog })));
const ReleaseDialog = lazy(() => import('./release-dialog.tsx').then((m) => ({ default: m.ReleaseDialog })));
const CheckDialog = lazy(() => import('./check-dialog.tsx').then((m) => ({ default: m.CheckDialog })));
const PrintDialog = lazy(() => import('./print-dialog.tsx').then((m) => ({ default: m.PrintDialog })));
const BulkTargets = lazy(() => import('../engineering/bulk-targets.tsx').then((m) => ({ default: m.BulkTargets })));

type Work = 'print' | 'assign' | 'procedure' | 'targets' | 'check' | 'release';

interface Props {
  readonly selection: Selection;
  readonly rows: readonly JointRow[];
  readonly search: RegisterSearch;
  /** joints behind the filters, where it is exact */
  readonly found: number | undefined;
  readonly choices: ChoicesAnswer;
  readonly onSelection: (selection: Selection) => void;
}

/** What can be done with the ticked joints at once. */
export function BulkBar({ selection, rows, search, found, choices, onSelection }: Props) {
  const text = useText('register');
  const format = useFormat();
  const may = useMay();
  const shutdownId = useShutdownId();
  const [work, setWork] = useState<Work | null>(null);
  const [failed, setFailed] = useState<unknown>();
  const count = { count: selection.size, shown: format.count(selection.size) };
  const joints = selectedNow(selection, rows);
  const done = () => setWork(null);

  const selectAll = async () => {
    try {
      const all = await fetchSelection(shutdownId, search);
      setFailed(all.truncated ? new Error(text('selection-truncated')) : undefined);
      if (!all.truncated) onSelection(new Map(all.rows.map((joint) => [joint.jointId, joint])));
    } catch (error) {
      setFailed(error);
    }
  };

  const kinds = [
    { work: 'print', action: 'print-sheets', label: text('print-sheets') },
    { work: 'targets', action: 'approve-target', label: text('set-targets') },
    { work: 'procedure', action: 'assign-procedure', label: text('assign-procedure') },
    { work: 'assign', action: 'plan-makes', label: text('assign-crew') },
    { work: 'check', action: 'check-quality', label: text('check') },
    { work: 'release', action: 'release-break', label: text('release') },
  ] as const;
  // Each role sees what is its own; the last of them is what it comes here for.
  const offered = kinds.filter(
    ({ action }) => may(action) || (action === 'check-quality' && may('check-as-chargehand')),
  );

  return (
    <>
      <StickyActionBar
        actions={offered.map(({ work: each, label }, index) => (
          <Button key={each} kind={index === offered.length - 1 ? 'primary' : 'plain'} onClick={() => setWork(each)}>
            {label}
          </Button>
        ))}
      >
        <strong>{text('selected', count)}</strong>{' '}
        {found !== undefined && found > selection.size && (
          <Button kind="quiet" onClick={() => void selectAll()}>
            {text('select-all-found', { count: format.count(found) })}
          </Button>
        )}
        <Button kind="quiet" onClick={() => onSelection(new Map())}>
          {text('select-none')}
        </Button>
        <ErrorNotice error={failed} />
      </StickyActionBar>
      <Suspense fallback={null}>
        {work === 'print' && <PrintDialog joints={joints} onClose={done} />}
        {work === 'assign' && <AssignDialog joints={joints} choices={choices} onClose={done} />}
        {work === 'procedure' && <ProcedureDialog joints={joints} onClose={done} />}
        {work === 'targets' && <BulkTargets joints={joints} onClose={done} />}
        {work === 'check' && <CheckDialog joints={joints} onClose={done} />}
        {work === 'release' && <ReleaseDialog joints={joints} onClose={done} />}
      </Suspense>
    </>
  );
}
