import type { JointRow, RegisterAnswer } from '@seatwell/contract';
import { useMutation } from '@tanstack/react-query';
import { request, withQuery } from '../../app/api-client.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { type Trade, useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import type { Formatter } from '../../format/formatter.ts';
import { useText } from '../../texts/text-provider.tsx';
import type { TextKey } from '../../texts/translate.ts';
import { useAnnouncer } from '../../ui/toast.tsx';
import { csvOf } from './csv.ts';
import type { RegisterSearch } from './register-search.ts';

const pageSize = 500;

type Cell = string | number | null;
type Column = readonly [TextKey<'register'>, (row: JointRow, trade: Trade, format: Formatter) => Cell];

const columns: readonly Column[] = [
  ['column-tag', (row) => row.tag],
  ['csv-kind', (row, trade) => trade.word('kind', row.kind)],
  ['criticality', (row) => row.criticality],
  ['area', (row) => row.area?.name ?? null],
  ['system', (row) => row.system?.code ?? null],
  ['csv-line', (row) => row.line],
  ['csv-location', (row) => row.location],
  ['csv-item', (row) => row.item],
  ['csv-standard', (row, trade) => trade.word('standard', row.standard)],
  ['csv-size', (row) => row.size],
  ['csv-rating', (row) => row.rating],
  ['csv-bolt-count', (row) => row.boltCount],
  ['csv-thread', (row) => row.boltThread],
  ['column-gasket', (row, trade) => trade.word('family', row.gasketFamily)],
  ['csv-scope', (row, trade) => (row.workScope === null ? null : trade.word('scope', row.workScope))],
  ['column-stage', (row, trade) => trade.word('stage', row.stage)],
  ['flag', (row, trade) => row.flags.map((flag) => trade.word('flag', flag)).join('; ')],
  ['column-waits', (row, trade) => (row.waitsFor.code === 'nothing' ? null : trade.waitsFor(row.waitsFor))],
  ['column-set', (row, _trade, format) => tenth(row.torque_Nm, format)],
  ['column-crew', (row) => row.crew?.code ?? null],
  ['column-planned', (row) => row.plannedOn],
  ['column-pack', (row) => row.packs.map((pack) => pack.number).join('; ')],
];

// Plain numbers: a spreadsheet reckons with them, and no mark between thousands stands in its way.
function tenth(torque_Nm: number | null, format: Formatter): number | null {
  return torque_Nm === null ? null : Math.round(format.toShown('torque', torque_Nm) * 10) / 10;
}

/** Every row behind the filters, page after page in the order of the list. */
async function allRows(shutdownId: string, search: RegisterSearch): Promise<readonly JointRow[]> {
  const rows: JointRow[] = [];
  let cursor: string | null = null;
  do {
    const page: RegisterAnswer = await request<RegisterAnswer>(
      withQuery(`/shutdowns/${shutdownId}/joints`, { ...search, limit: pageSize, cursor }),
    );
    rows.push(...page.rows);
    cursor = page.next;
  } while (cursor !== null);
  return rows;
}

function save(name: string, content: string): void {
  const address = URL.createObjectURL(new Blob([content], { type: 'text/csv;charset=utf-8' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the content by the next turn.
  setTimeout(() => URL.revokeObjectURL(address), 0);
}

/** Saves the list behind the filters as a file for a spreadsheet. */
export function useExport(search: RegisterSearch) {
  const text = useText('register');
  const trade = useTrade();
  const format = useFormat();
  const { toast } = useAnnouncer();
  const shutdownId = useShutdownId();
  return useMutation({
    mutationFn: async () => {
      const rows = await allRows(shutdownId, search);
      const head = columns.map(([name]) => text(name, { unit: format.unit('torque') }));
      const body = rows.map((row) => columns.map(([, cellOf]) => cellOf(row, trade, format)));
      save(`${text('csv-file')}.csv`, csvOf([head, ...body]));
      return rows.length;
    },
    onSuccess: (count) => toast({ message: text('exported', { count: format.count(count) }) }),
  });
}
