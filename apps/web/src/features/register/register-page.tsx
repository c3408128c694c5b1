import type { JointRow, RegisterSort } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useLocation, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { choicesQuery } from '../../app/reads.ts';
import { useGo } from '../../app/use-go.ts';
import { useCurrentShutdown, useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Skeleton } from '../../ui/skeleton.tsx';
import { VirtualTable } from '../../ui/virtual-table.tsx';
import { BulkBar } from './bulk-bar.tsx';
import { JointCard } from './joint-card.tsx';
import styles from './register.module.css';
import { RegisterFilters } from './register-filters.tsx';
import { isFiltered, type RegisterSearch, readRegisterSearch, sortedBy } from './register-search.ts';
import { RegisterSub } from './register-sub.tsx';
import { type Selection, tickedTo } from './selection.ts';
import { useColumns } from './use-columns.tsx';
import { useExport } from './use-export.ts';
import { useRegister } from './use-register.ts';

const sortOfColumn: Readonly<Record<string, RegisterSort>> = {
  tag: 'tag',
  flange: 'size',
  stage: 'stage',
  crew: 'crew',
  planned: 'planned',
};

/** Every joint of the shutdown: filtered by a sentence, ordered by its heads, worked on by the list. */
export function RegisterPage() {
  const text = useText('register');
  const shutdownId = useShutdownId();
  const shutdown = useCurrentShutdown();
  const go = useGo();
  const search = readRegisterSearch(useSearch({ strict: false }));
  const { data: choices } = useSuspenseQuery(choicesQuery(shutdownId));
  const register = useRegister(shutdownId, search);
  const exporting = useExport(search);
  const [selection, setSelection] = useState<Selection>(new Map());
  const columns = useColumns(search, register.loaded);
  const visit = useLocation({ select: (location) => location.state.__TSR_key });

  const show = (next: RegisterSearch) => {
    setSelection(new Map());
    go(addresses.register(shutdownId, { ...next }), { replace: true });
  };
  const open = (row: JointRow) => go(addresses.joint(shutdownId, row.jointId));
  const empty = !register.loading && register.rows.length === 0 && !register.error;

  return (
    <>
      <PageHeader
        title={text('register')}
        sub={<RegisterSub register={register} filtered={isFiltered(search)} />}
        actions={
          <>
            {register.rows.length > 0 && (
              <Button busy={exporting.isPending} onClick={() => exporting.mutate()}>
                {text('export')}
              </Button>
            )}
            <Button onClick={() => go(addresses.importRegister(shutdownId))}>{text('import')}</Button>
            <Button kind="primary" onClick={() => go(addresses.addJoint(shutdownId))}>
              {text('add-joint')}
            </Button>
          </>
        }
      />
      <RegisterFilters search={search} onChange={show} choices={choices} timeZone={shutdown?.timeZone ?? 'UTC'} />
      <ErrorNotice error={register.error} />
      <ErrorNotice error={exporting.error} />
      {register.loading && <Skeleton lines={12} />}
      {empty && <EmptyRegister filtered={isFiltered(search)} onAll={() => show({})} />}
      {register.rows.length > 0 && (
        <div aria-busy={register.stale} className={styles.table} data-stale={register.stale ? '' : undefined}>
          <VirtualTable
            label={text('joints')}
            columns={columns}
            rows={register.rows}
            rowKey={(row) => row.jointId}
            rowName={(row) => row.tag}
            onOpen={open}
            visit={visit}
            selected={new Set(selection.keys())}
            onSelectedChange={(ids) => setSelection(tickedTo(ids, selection, register.loaded.flat()))}
            onSort={(key) => {
              const sort = sortOfColumn[key];
              if (sort) show(sortedBy(search, sort));
            }}
            onShown={register.onShown}
            card={(row) => <JointCard row={row} />}
          />
        </div>
      )}
      {selection.size > 0 && (
        <BulkBar
          selection={selection}
          rows={register.loaded.flat()}
          search={search}
          found={register.found?.exact ? register.found.count : undefined}
          choices={choices}
          onSelection={setSelection}
        />
      )}
    </>
  );
}

function EmptyRegister({ filtered, onAll }: { filtered: boolean; onAll: () => void }) {
  const text = useText('register');
  const shutdownId = useShutdownId();
  const go = useGo();
  if (filtered) {
    return (
      <EmptyState title={text('empty-filtered')} actions={<Button onClick={onAll}>{text('look-at-all')}</Button>}>
        <p>{text('empty-filtered-detail')}</p>
      </EmptyState>
    );
  }
  return (
    <EmptyState
      title={text('empty-register')}
      actions={
        <>
          <Button kind="primary" onClick={() => go(addresses.importRegister(shutdownId))}>
            {text('import')}
          </Button>
          <Button onClick={() => go(addresses.addJoint(shutdownId))}>{text('add-joint')}</Button>
        </>
      }
    >
      <p>{text('empty-register-detail')}</p>
    </EmptyState>
  );
}
