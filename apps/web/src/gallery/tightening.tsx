import { useState } from 'react';
import { useFormat } from '../format/format-provider.tsx';
import { Button } from '../ui/button.tsx';
import { BoltPlan } from '../ui/drawing.tsx';
import { ProgressBar } from '../ui/progress-bar.tsx';
import styles from './tightening.module.css';

const order = [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16];

/** One task on a phone: the next bolt, its set value, the action at the thumb. */
export function Tightening() {
  const format = useFormat();
  const [done, setDone] = useState(10);
  const now = order[done % 16];
  const next = order[(done + 1) % 16];
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <h1>U41-HX3-07</h1>
        <p className={styles.soft}>NPS 12 · Class 300 · 16 × 1⅛ in · RF</p>
      </header>
      <div className={styles.pass}>
        <ProgressBar label="Pass 2 of 4 · 70 %" valueText={`${done} of 16`} done={16 + done} total={64} steps={4} />
      </div>
      <main className={styles.plan}>
        <BoltPlan
          size={360}
          passes={4}
          title={`Bolt ${now} now, ${next} next`}
          bolts={Array.from({ length: 16 }, (_, index) => ({
            label: index + 1,
            clockwiseIndex: index + 1,
            passesDone: order.indexOf(index + 1) < done ? 2 : 1,
            state: index + 1 === now ? 'now' : index + 1 === next ? 'next' : undefined,
          }))}
          centre={[
            { text: `bolt ${now}`, size: 0.065, tone: 'accent' },
            { text: format.value('torque', 475), size: 0.17, weight: 720 },
            { text: format.unit('torque'), size: 0.055, tone: 'soft', weight: 500 },
          ]}
          viewedFrom="from the pump side"
        />
      </main>
      <footer className={styles.foot}>
        <p>
          <span>
            Next <strong>{next}</strong>
          </span>
          <span className={styles.soft}>offline · 3 to send</span>
        </p>
        <Button kind="primary" size="large" wide onClick={() => setDone((done + 1) % 16)}>
          Bolt {now} done
        </Button>
        <Button size="large" wide>
          Stop here
        </Button>
      </footer>
    </div>
  );
}
