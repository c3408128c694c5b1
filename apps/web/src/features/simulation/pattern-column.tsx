import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { EdgeDrawing } from './edge-drawing.tsx';
import { FinalBars } from './final-bars.tsx';
import { LoadPlan } from './load-plan.tsx';
import { usePatternWords } from './pattern-words.ts';
import type { SimulatedPattern } from './run-simulation.ts';
import styles from './simulation.module.css';
import { StressBand } from './stress-band.tsx';

interface Props {
  readonly pattern: SimulatedPattern;
  /** step in sight, from 0; the last one stays when the other pattern goes on */
  readonly at: number;
  readonly limit_percent: number;
  readonly factor: number;
  readonly start_mm: number;
  readonly most_MPa: number;
}

/** One pattern: its bolts, its tilt and its gasket at the step in sight, and how it ends. */
export function PatternColumn({ pattern, at, limit_percent, factor, start_mm, most_MPa }: Props) {
  const text = useText('simulation');
  const format = useFormat();
  const words = usePatternWords();
  const { simulation, band } = pattern;
  const step = simulation.steps[Math.min(at, simulation.steps.length - 1)];
  if (!step) return null;
  const { final } = simulation;
  return (
    <section className={styles.column}>
      <h2>{words(pattern.choice)}</h2>
      <p className={styles.soft}>
        {text('step-of', {
          step: format.count(Math.min(at, simulation.steps.length - 1) + 1),
          steps: format.count(simulation.steps.length),
          pass: format.count(step.pass + 1),
          bolts: step.bolts.map((bolt) => format.count(bolt)).join(' + '),
        })}
      </p>
      <LoadPlan
        loads_percent={step.loads_percent}
        turned={step.bolts}
        limit_percent={limit_percent}
        label={text('plan-label', {
          min: format.count(step.statistics.min),
          max: format.count(step.statistics.max),
        })}
      />
      <EdgeDrawing gap_mm={step.gap_mm} start_mm={start_mm} factor={factor} />
      <h3>{text('gasket-stress')}</h3>
      <StressBand steps={simulation.steps} at={at} most_MPa={most_MPa} />
      <h3>{text('final-loads')}</h3>
      <FinalBars pattern={pattern} limit_percent={limit_percent} />
      <KeyValues
        items={[
          {
            name: text('loads'),
            value: text('loads-of', {
              min: format.count(final.min),
              mean: format.count(final.mean),
              max: format.count(final.max),
              sd: format.number(final.sd, 1),
            }),
          },
          {
            name: text('band'),
            value: text('band-of', { low: format.count(band.low.min), high: format.count(band.high.min) }),
          },
          { name: text('moves'), value: format.count(simulation.moves) },
          { name: text('peak'), value: format.quantity('stress', simulation.gasketPeak_MPa) },
          { name: text('tilt-largest'), value: format.quantity('gap', simulation.largestParallelism_mm) },
          { name: text('tilt-end'), value: format.quantity('gap', simulation.parallelism_mm) },
        ]}
      />
    </section>
  );
}
