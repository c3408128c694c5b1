import { STAGES } from '@seatwell/contract';
import { BoltPlan, StageGlyph, StageWord } from '../ui/drawing.tsx';
import { PageHeader } from '../ui/page-header.tsx';
import styles from './gallery.module.css';

type Bolts = Parameters<typeof BoltPlan>[0]['bolts'];

function bolts(count: number, change: (place: number) => Partial<Bolts[number]>): Bolts {
  return Array.from({ length: count }, (_, index) => ({
    label: index + 1,
    clockwiseIndex: index + 1,
    passesDone: 0,
    ...change(index + 1),
  }));
}

/** The bolt plan from 4 to 200 bolts, and the signs of the stages. */
export function Plans() {
  const centre = [
    { text: 'pass 2 of 4', size: 0.05, tone: 'soft' as const, weight: 500 },
    { text: '475', size: 0.15, weight: 720 },
    { text: 'N·m', size: 0.055, tone: 'soft' as const, weight: 500 },
  ];
  const common = { passes: 4, size: 360, centre, title: 'Bolt plan' };
  const eights = (count: number, current: number) =>
    Array.from({ length: count / 8 }, (_, group) => ({
      label: String.fromCharCode(65 + group),
      firstClockwiseIndex: group * 8 + 1,
      lastClockwiseIndex: group * 8 + 8,
      current: group === current,
    }));
  return (
    <>
      <PageHeader title="One drawing for screen, print and sign" />
      <div className={styles.stages}>
        {STAGES.map((stage) => (
          <StageWord key={stage} stage={stage} size={24}>
            {stage.replace('-', ' ')}
          </StageWord>
        ))}
      </div>
      <div className={styles.stages}>
        {STAGES.map((stage) => (
          <StageGlyph key={stage} stage={stage} size={72} title={stage} />
        ))}
      </div>
      <div className={styles.plans}>
        <BoltPlan {...common} viewedFrom="from the pump side" bolts={bolts(4, (place) => ({ passesDone: place }))} />
        <BoltPlan {...common} bolts={bolts(8, (place) => ({ passesDone: 4, loadPercent: 70 + place * 8 }))} />
        <BoltPlan
          {...common}
          bolts={bolts(16, (place) => ({
            passesDone: place % 3 === 0 ? 2 : 1,
            state: place === 6 ? 'now' : place === 14 ? 'next' : undefined,
          }))}
        />
        <BoltPlan
          {...common}
          bolts={bolts(32, (place) => ({
            passesDone: place < 20 ? 3 : 2,
            state: place === 20 ? 'now' : place === 4 ? 'next' : undefined,
          }))}
        />
        <BoltPlan
          {...common}
          bolts={bolts(52, (place) => ({
            passesDone: place < 20 ? 3 : 2,
            state: place === 20 ? 'now' : place === 46 ? 'next' : undefined,
          }))}
        />
        <BoltPlan
          {...common}
          groups={eights(64, 5)}
          bolts={bolts(64, (place) => ({
            passesDone: place < 40 ? 4 : 0,
            state: place > 40 && place < 49 ? (place === 41 ? 'now' : 'group') : undefined,
          }))}
        />
        <BoltPlan
          {...common}
          groups={eights(120, 0)}
          bolts={bolts(120, (place) => ({
            passesDone: place < 60 ? 4 : 1,
            state: place < 9 ? (place === 3 ? 'now' : 'group') : undefined,
          }))}
        />
        <BoltPlan
          {...common}
          bolts={bolts(200, (place) => ({
            passesDone: place % 5,
            state: place === 77 ? 'now' : place === 177 ? 'next' : undefined,
            loadPercent: 60 + (place % 60),
          }))}
        />
        <BoltPlan
          {...common}
          seenFrom="other-side"
          viewedFrom="from the channel side"
          datumAngle_deg={22.5}
          bolts={bolts(8, () => ({ passesDone: 0 }))}
        />
      </div>
    </>
  );
}
