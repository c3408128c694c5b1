import type { JointRow } from '@seatwell/contract';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { StageWord } from '../../ui/drawing.tsx';
import { Flags } from './flags.tsx';
import styles from './register.module.css';

/** A joint of the register on a phone. */
export function JointCard({ row }: { row: JointRow }) {
  const trade = useTrade();
  const format = useFormat();
  const bolts = trade.bolts(row.boltCount, row.boltThread);
  return (
    <span className={styles.card}>
      <span className={styles.cardHead}>
        <strong>{row.tag}</strong>
        <StageWord stage={row.stage}>{trade.word('stage', row.stage)}</StageWord>
      </span>
      <span className={styles.soft}>{[trade.flange(row.size, row.rating), bolts].filter(Boolean).join(' · ')}</span>
      <span>
        {[
          row.torque_Nm === null ? '' : format.quantity('torque', row.torque_Nm),
          row.crew?.code ?? '',
          trade.waitsFor(row.waitsFor),
        ]
          .filter(Boolean)
          .join(' · ')}
      </span>
      <Flags flags={row.flags} />
    </span>
  );
}
