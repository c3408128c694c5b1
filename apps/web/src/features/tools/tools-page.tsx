import type { ToolRow } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { useDeferredValue, useState } from 'react';
import { toolsQuery } from '../../app/reads.ts';
import { textOf } from '../../app/search-params.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Sentence, SentenceChoice } from '../../ui/sentence.tsx';
import { Table } from '../../ui/table.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { RegisterToolDialog } from './register-tool-dialog.tsx';
import { isUsable, toolStates, toolsFound } from './tool-search.ts';
import { ToolSheet } from './tool-sheet.tsx';
import styles from './tools.module.css';

/** Every tool, gauge and pump, and until when it may be used. */
export function ToolsPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('tools');
  const format = useFormat();
  const { data } = useSuspenseQuery(toolsQuery);
  const asked = textOf((useSearch({ strict: false }) as Record<string, unknown>).find) ?? '';
  const [find, setFind] = useState(asked);
  const [states, setStates] = useState<readonly string[]>([]);
  const [registering, setRegistering] = useState(false);
  const [shownId, setShownId] = useState<string | null>(null);
  const rows = toolsFound(data.rows, useDeferredValue(find), states);
  const usable = data.rows.filter(isUsable).length;
  const shown = data.rows.find((row) => row.toolId === shownId);
  return (
    <>
      <PageHeader
        title={text('title', {
          count: data.rows.length,
          usable: format.count(usable),
          total: format.count(data.rows.length),
        })}
        documentTitle={text('tools')}
        actions={
          <Button
            kind="primary"
            disabledReason={reasonAgainst(data.actions, 'tool-registered')}
            onClick={() => setRegistering(true)}
          >
            {text('register')}
          </Button>
        }
      />
      <Sentence label={text('filter')}>
        {text('tools-that-are')}{' '}
        <SentenceChoice
          label={text('state')}
          multiple
          shown={
            states.length === 0
              ? text('any-state')
              : states.map((state) => text(`state-${state as ToolRow['state']}`)).join(', ')
          }
          value={states}
          onChange={setStates}
          options={toolStates.map((value) => ({ value, label: text(`state-${value}`) }))}
        />
      </Sentence>
      <div className={styles.find}>
        <TextField label={text('find')} type="search" value={find} onChange={setFind} />
      </div>
      <ToolTable rows={rows} onShow={setShownId} />
      {registering && <RegisterToolDialog onClose={() => setRegistering(false)} />}
      {shown && <ToolSheet tool={shown} actions={data.actions} onClose={() => setShownId(null)} />}
    </>
  );
}

function ToolTable({ rows, onShow }: { rows: readonly ToolRow[]; onShow: (toolId: string) => void }) {
  const text = useText('tools');
  const trade = useTrade();
  const format = useFormat();
  return (
    <Table
      caption={text('tools')}
      captionHidden
      rows={rows}
      rowKey={(row) => row.toolId}
      empty={text('none')}
      columns={[
        { key: 'tag', header: text('tag'), rowHeader: true, cell: (row) => row.tag },
        { key: 'kind', header: text('kind'), cell: (row) => trade.word('tool', row.kind) },
        { key: 'maker', header: text('maker'), cell: (row) => row.maker },
        { key: 'scale', header: text('scale'), cell: (row) => <Scale row={row} /> },
        { key: 'state', header: text('state'), cell: (row) => <ToolState row={row} /> },
        {
          key: 'until',
          header: text('valid-through'),
          cell: (row) => (row.inForce === null ? '' : format.datedDay(row.inForce.validThrough)),
        },
        {
          key: 'show',
          header: text('action'),
          cell: (row) => (
            <Button kind="quiet" label={text('show-of', { tag: row.tag })} onClick={() => onShow(row.toolId)}>
              {text('show')}
            </Button>
          ),
        },
      ]}
    />
  );
}

/** The scale in the person's units. */
export function Scale({ row }: { row: Pick<ToolRow, 'scaleMinimum' | 'scaleMaximum' | 'scaleUnit'> }) {
  const format = useFormat();
  const quantity = row.scaleUnit === 'N·m' ? 'torque' : row.scaleUnit === 'MPa' ? 'pressure' : 'gap';
  return row.scaleMinimum === null
    ? format.quantity(quantity, row.scaleMaximum)
    : format.range(quantity, row.scaleMinimum, row.scaleMaximum);
}

export function ToolState({ row }: { row: Pick<ToolRow, 'state'> }) {
  const text = useText('tools');
  return (
    <span className={styles.state} data-state={row.state}>
      {text(`state-${row.state}`)}
    </span>
  );
}
