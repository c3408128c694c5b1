import { useFormat } from '../format/format-provider.tsx';
import { Button } from '../ui/button.tsx';
import { StageGlyph } from '../ui/drawing.tsx';
import { Figure, FigureRow } from '../ui/figure.tsx';
import { Notice } from '../ui/notice.tsx';
import { PageHeader } from '../ui/page-header.tsx';
import { StackedBar } from '../ui/stacked-bar.tsx';
import { Table } from '../ui/table.tsx';
import styles from './gallery.module.css';

const partTight = [
  {
    tag: 'U41-HX3-07',
    flange: 'NPS 12 · 300 · 16',
    left: 'pass 2, bolt 6 · 04:40',
    by: 'crew N2',
    next: 'pass 2 from bolt 1',
  },
  {
    tag: 'U30-P12-02',
    flange: 'NPS 8 · 150 · 8',
    left: 'pass 1, bolt 5 · 02:15',
    by: 'crew N1',
    next: 'gap check, pass 1',
  },
  { tag: 'U41-R1-MW2', flange: 'manway · 24', left: 'tool failed · 05:20', by: 'crew N4', next: 'pass 3 from bolt 1' },
];
const packs = [
  { pack: 'TP-41-03', why: '1 of 46 joints not checked', who: 'J. Brandt, QC' },
  { pack: 'TP-30-08', why: 'Release not signed', who: 'K. Nair, operations' },
  { pack: 'TP-30-05', why: 'Relaxation pass due on 4 joints, from 10:30', who: 'crew D3' },
];
const areas = [
  { key: 'crude', label: 'Crude 30', values: [44, 12, 8], mark: 62 },
  { key: 'hydro', label: 'Hydrotreater 41', values: [31, 9, 11], mark: 55 },
  { key: 'utilities', label: 'Utilities 52', values: [58, 14, 5], mark: 70 },
  { key: 'flare', label: 'Flare 60', values: [22, 5, 2], mark: 20 },
];

/** A page that answers: title, part tight first, figures, bars, tables. */
export function Answers() {
  const format = useFormat();
  return (
    <>
      <PageHeader
        title="Three flanges are part tight; two test packs wait for one signature each"
        sub={`${format.shift('2027-03-10T04:40:00Z')} handed over ${format.time('2027-03-10T05:52:00Z')} · day 11 of 28 · ${format.count(1204)} of ${format.count(2310)} joints tight`}
        actions={<Button>Print the morning sheet</Button>}
        documentTitle="Today"
      />
      <div className={styles.columns}>
        <div className={styles.section}>
          <Notice kind="stop" title="Part tight now">
            <Table
              caption="Part tight now"
              captionHidden
              rows={partTight}
              rowKey={(row) => row.tag}
              columns={[
                { key: 'stage', header: '', cell: () => <StageGlyph stage="part-tight" title="Part tight" /> },
                { key: 'tag', header: 'Joint', rowHeader: true, cell: (row) => <a href="#answers">{row.tag}</a> },
                { key: 'flange', header: 'Flange', cell: (row) => row.flange },
                { key: 'left', header: 'Left at', cell: (row) => row.left },
                { key: 'by', header: 'By', cell: (row) => row.by },
                { key: 'next', header: 'Restart', cell: (row) => row.next },
              ]}
            />
          </Notice>
          <Table
            caption="What stops the next test packs"
            rows={packs}
            rowKey={(row) => row.pack}
            columns={[
              { key: 'pack', header: 'Pack', rowHeader: true, cell: (row) => row.pack },
              { key: 'why', header: 'Waits for', cell: (row) => row.why },
              { key: 'who', header: 'Who', cell: (row) => row.who },
            ]}
          />
          <StackedBar
            title="Tight by area, against the plan for this morning"
            parts={['checked', 'tight', 'part tight or nipped up']}
            markName="planned for now"
            formatNumber={format.count}
            rows={areas.map((area) => {
              const sum = area.values.reduce((total, value) => total + value, 0);
              return {
                ...area,
                total: 100,
                href: '#answers',
                valueText: `${format.percent(sum / 100)} of ${area.mark}`,
                attention: sum < area.mark - 3,
              };
            })}
          />
        </div>
        <div className={styles.section}>
          <h2>Still in the plant</h2>
          <FigureRow>
            <Figure value="61" label="blinds in" href="#answers" />
            <Figure value="2" label="overdue out" tone="attention" href="#answers" />
            <Figure value="17" label="temporary gaskets" href="#answers" />
            <Figure value="5" label="open ends" href="#answers" />
          </FigureRow>
          <Table
            caption="Last shift"
            rows={[
              { area: 'Crude 30', opened: 41, tight: 58, checked: 52 },
              { area: 'Hydrotreater 41', opened: 12, tight: 44, checked: 31 },
              { area: 'Utilities 52', opened: 7, tight: 19, checked: 22 },
            ]}
            rowKey={(row) => row.area}
            columns={[
              { key: 'area', header: 'Area', cell: (row) => row.area, footer: 'Total' },
              { key: 'opened', header: 'opened', numeric: true, cell: (row) => format.count(row.opened), footer: '60' },
              { key: 'tight', header: 'tight', numeric: true, cell: (row) => format.count(row.tight), footer: '121' },
              {
                key: 'checked',
                header: 'checked',
                numeric: true,
                cell: (row) => format.count(row.checked),
                footer: '105',
              },
            ]}
          />
          <Notice kind="attention" title="Lapses before 18:00">
            <p>Torque wrench HW-112: calibration ends today at 16:00.</p>
          </Notice>
        </div>
      </div>
    </>
  );
}
