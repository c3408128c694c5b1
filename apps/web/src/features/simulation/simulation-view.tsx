import type { PatternAdvice } from '@seatwell/calc';
import { useCallback, useEffect, useState } from 'react';
import { useSaid } from '../../app/use-said.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Legend } from '../../ui/legend.tsx';
import { Notice } from '../../ui/notice.tsx';
import { AdviceTable } from './advice-table.tsx';
import { ComputedSection } from './computed-section.tsx';
import { equalWithinBand, exaggeration } from './edge-view.ts';
import { LoadsTable } from './loads-table.tsx';
import { PatternColumn } from './pattern-column.tsx';
import type { SimulationResult } from './run-simulation.ts';
import styles from './simulation.module.css';
import { Stepper } from './stepper.tsx';

interface Props {
  readonly result: SimulationResult;
  readonly limit_percent: number;
  readonly asTable: boolean;
  readonly onCompare: (advice: PatternAdvice) => void;
  readonly onShowComputed: () => void;
}

// Room for the tilt in the edge drawing.
const shownTilt = 40;

/** The two patterns side by side at one step, and the advice. */
export function SimulationView({ result, limit_percent, asTable, onCompare, onShowComputed }: Props) {
  const text = useText('simulation');
  const said = useSaid('calculation');
  const { patterns } = result;
  const count = Math.max(1, ...patterns.map((pattern) => pattern.simulation.steps.length));
  const [at, setAt] = useState(count - 1);
  const move = useCallback((next: number) => setAt(next), []);
  // Another simulation is shown from its end: how the joint comes out is the first question.
  useEffect(() => setAt(count - 1), [count]);
  const equal = equalWithinBand(patterns);
  const steps = patterns.flatMap((pattern) => pattern.simulation.steps);
  const tilt = Math.max(0, ...patterns.map((pattern) => pattern.simulation.largestParallelism_mm));
  const start_mm = Math.max(0.1, ...steps.slice(0, 1).flatMap((step) => step.gap_mm));
  const most_MPa = Math.max(1, ...steps.map((step) => step.gasketStress_MPa.max));
  return (
    <>
      <Stepper at={Math.min(at, count - 1)} count={count} onChange={move} />
      {asTable ? (
        <LoadsTable patterns={patterns} at={at} />
      ) : (
        <>
          <Legend
            entries={(['none', 'low', 'below', 'within', 'above'] as const).map((standing) => ({
              name: text(`standing-${standing}`, { limit: limit_percent }),
              swatch: <span className={styles.swatch} data-standing={standing} />,
            }))}
          />
          {equal && <p>{text('equal-within-band')}</p>}
          <div className={styles.columns}>
            {patterns.map((pattern, index) => (
              <PatternColumn
                // biome-ignore lint/suspicious/noArrayIndexKey: the two columns have fixed places
                key={index}
                pattern={pattern}
                at={at}
                limit_percent={limit_percent}
                factor={exaggeration(tilt, shownTilt)}
                start_mm={start_mm}
                most_MPa={most_MPa}
              />
            ))}
          </div>
        </>
      )}
      {result.warnings.length > 0 && (
        <Notice kind="attention" title={text('warnings')}>
          <ul>
            {result.warnings.map((warning) => (
              <li key={warning.message}>{said(warning)}</li>
            ))}
          </ul>
        </Notice>
      )}
      <ComputedSection computed={result.computed} onShow={onShowComputed} />
      <AdviceTable advice={result.advice} onCompare={onCompare} />
    </>
  );
}
