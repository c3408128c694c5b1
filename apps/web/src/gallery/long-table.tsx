import { STAGES } from '@seatwell/contract';
import { useMemo, useState } from 'react';
import { useFormat } from '../format/format-provider.tsx';
import { Button } from '../ui/button.tsx';
import { StageWord } from '../ui/drawing.tsx';
import { PageHeader } from '../ui/page-header.tsx';
import { Sentence, SentenceChoice } from '../ui/sentence.tsx';
import { StickyActionBar } from '../ui/sticky-action-bar.tsx';
import { VirtualTable } from '../ui/virtual-table.tsx';
import styles from './gallery.module.css';

const flanges = ['NPS 10 · 300', 'NPS 12 · 300', 'NPS 6 · 300', 'NPS 8 · 600 RTJ', 'NPS 4 · 150'];
const boltings = ['16 × 1', '16 × 1⅛', '12 × ¾', '12 × 1⅛', '8 × ⅝'];
const rowsInAll = 100_000;

interface Row {
  readonly id: string;
  readonly tag: string;
  readonly kind: number;
  readonly stage: (typeof STAGES)[number];
  readonly torque_Nm: number;
}

function makeRows(): Row[] {
  return Array.from({ length: rowsInAll }, (_, index) => ({
    id: String(index),
    tag: `U${30 + (index % 12)}-E${1 + (index % 9)}-${String(index).padStart(5, '0')}`,
    kind: (index * 7) % flanges.length,
    stage: STAGES[(index * 5) % STAGES.length] ?? 'planned',
    torque_Nm: 190 + ((index * 37) % 960),
  }));
}

const areaOptions = [
  'Crude 30',
  'Hydrotreater 41',
  'Utilities 52',
  'Flare 60',
  'Tank farm 70',
  'Boilers 81',
  'Amine 43',
  'Sulphur 45',
  'Jetty 90',
].map((area) => ({ value: area, label: area }));

/** A register of a hundred thousand rows under a sentence that filters it. */
export function LongTable() {
  const format = useFormat();
  const rows = useMemo(makeRows, []);
  const [selected, setSelected] = useState<ReadonlySet<string>>(new Set(['3', '4']));
  const [areas, setAreas] = useState<readonly string[]>(['Hydrotreater 41']);
  const [order, setOrder] = useState('walking order');
  const [opened, setOpened] = useState('');
  return (
    <>
      <PageHeader
        title="Register"
        sub={`${format.count(rows.length)} joints · 14 found since Monday · 6 without a target${opened}`}
        actions={
          <>
            <Button>Import</Button>
            <Button disabledReason="Export needs the role coordinator.">Export</Button>
            <Button kind="primary">Add joint</Button>
          </>
        }
      />
      <Sentence label="Filter">
        Joints in{' '}
        <SentenceChoice
          label="Area"
          multiple
          options={areaOptions}
          value={areas}
          onChange={setAreas}
          shown={areas.length === 0 ? 'any area' : areas.join(' or ')}
        />
        , ordered by{' '}
        <SentenceChoice
          label="Order"
          options={['walking order', 'planned date', 'tag'].map((each) => ({ value: each, label: each }))}
          value={[order]}
          onChange={([next]) => setOrder(next ?? order)}
          shown={order}
        />
      </Sentence>
      <VirtualTable
        label="Joints"
        rows={rows}
        rowKey={(row) => row.id}
        rowName={(row) => row.tag}
        selected={selected}
        onSelectedChange={setSelected}
        onOpen={(row) => setOpened(` · opened ${row.tag}`)}
        onSort={() => undefined}
        columns={[
          {
            key: 'tag',
            header: 'Tag',
            width: 'minmax(9rem, 1.2fr)',
            rowHeader: true,
            sorted: 'ascending',
            cell: (row) => row.tag,
          },
          { key: 'flange', header: 'Flange', width: 'minmax(9rem, 1fr)', cell: (row) => flanges[row.kind] },
          { key: 'bolts', header: 'Bolts', width: 'minmax(6rem, 0.7fr)', cell: (row) => boltings[row.kind] },
          {
            key: 'stage',
            header: 'Stage',
            width: 'minmax(10rem, 1fr)',
            sorted: 'none',
            cell: (row) => <StageWord stage={row.stage}>{row.stage.replace('-', ' ')}</StageWord>,
          },
          {
            key: 'torque',
            header: `Set ${format.unit('torque')}`,
            width: '6.5rem',
            numeric: true,
            cell: (row) => format.value('torque', row.torque_Nm),
          },
          { key: 'planned', header: 'Planned', width: '7rem', cell: () => format.calendarDay('2027-03-09') },
          { key: 'pack', header: 'Pack', width: '7rem', cell: (row) => `TP-41-0${row.kind + 1}` },
        ]}
        card={(row) => (
          <div className={styles.card}>
            <strong>{row.tag}</strong>
            <StageWord stage={row.stage}>{row.stage.replace('-', ' ')}</StageWord>
            <span className={styles.soft}>
              {flanges[row.kind]} · {boltings[row.kind]}
            </span>
            <span>{format.quantity('torque', row.torque_Nm)}</span>
          </div>
        )}
      />
      <StickyActionBar
        actions={
          <>
            <Button>Assign crew</Button>
            <Button kind="primary" disabledReason={selected.size === 0 ? 'Tick the joints first.' : undefined}>
              Release to break
            </Button>
          </>
        }
      >
        <strong>{format.count(selected.size)} selected</strong> · NPS 6 to 12, one procedure
      </StickyActionBar>
    </>
  );
}
