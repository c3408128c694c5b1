import { useCallback, useMemo, useRef, useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useSaid } from '../../app/use-said.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Notice } from '../../ui/notice.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Skeleton } from '../../ui/skeleton.tsx';
import { CalculateWays } from '../calculator/calculate-ways.tsx';
import { asInput } from '../calculator/inputs.ts';
import { PhoneBar } from '../calculator/phone-bar.tsx';
import { Refused } from '../calculator/refused.tsx';
import { useAddressInputs } from '../calculator/use-inputs.ts';
import {
  COMPUTED,
  readChoice,
  readSimulationInputs,
  readWay,
  type SimulationInputs,
  withoutRun,
  writeChoice,
} from './choices.ts';
import { jobOf } from './job.ts';
import { LongRunSection } from './long-run-section.tsx';
import { PrintedInputs } from './printed-inputs.tsx';
import styles from './simulation.module.css';
import { SimulationFields } from './simulation-inputs.tsx';
import { SimulationView } from './simulation-view.tsx';
import { useSimulation } from './use-simulation.ts';
import { Validity } from './validity.tsx';

const addressOf = (inputs: SimulationInputs) => addresses.simulate(inputs);

/** What each pattern does to a flange, step by step, and which brings every bolt within the limit. */
export function SimulationPage() {
  const text = useText('simulation');
  const said = useSaid('calculation');
  const { inputs, change: changeAll } = useAddressInputs(readSimulationInputs, addressOf);
  const change = useCallback((changed: SimulationInputs) => changeAll(withoutRun(changed)), [changeAll]);
  const first = readChoice(inputs.first, 'legacy');
  const second = readWay(inputs.second, 'circular');
  const prepared = useMemo(() => jobOf(inputs), [inputs]);
  const { answer, running, failed } = useSimulation(prepared.job);
  const [asTable, setAsTable] = useState(false);
  const answerPlace = useRef<HTMLDivElement>(null);
  // Another pattern beside the first is another view of the same long run.
  const compare = useCallback((written: string) => changeAll({ second: written }), [changeAll]);
  return (
    <>
      <PageHeader
        over={<CalculateWays />}
        title={text('title')}
        documentTitle={text('simulation')}
        sub={text('sub')}
        actions={
          <>
            <Button onClick={() => window.print()}>{text('print')}</Button>
            <Button pressed={asTable} onClick={() => setAsTable(!asTable)}>
              {text(asTable ? 'as-drawing' : 'as-table')}
            </Button>
          </>
        }
      />
      <div className={styles.page}>
        <PrintedInputs inputs={inputs} />
        <SimulationFields
          inputs={inputs}
          change={change}
          boltCount={prepared.boltCount}
          first={first}
          second={second}
        />
        <div className={styles.answer} aria-busy={running} ref={answerPlace} tabIndex={-1}>
          {prepared.job === undefined && (
            <Notice title={text('missing')}>
              <p>{prepared.refused?.map((each) => said(each)).join(' ') ?? text('missing-detail')}</p>
            </Notice>
          )}
          {failed !== undefined && (
            <Notice kind="stop" title={text('failed')} live>
              <p>{failed}</p>
            </Notice>
          )}
          {prepared.job !== undefined && answer === undefined && running && <Skeleton lines={10} />}
          {answer !== undefined &&
            prepared.job !== undefined &&
            ('refused' in answer ? (
              <Refused title={text('refused')} items={answer.refused} />
            ) : (
              <SimulationView
                result={answer}
                limit_percent={prepared.job.limit_percent}
                asTable={asTable}
                onCompare={(advice) => compare(writeChoice(advice.choice))}
                onShowComputed={() => compare(COMPUTED)}
              />
            ))}
          {answer !== undefined && !('refused' in answer) && prepared.job && prepared.boltCount && (
            <LongRunSection
              job={prepared.job}
              boltCount={prepared.boltCount}
              computed={answer.computed}
              runs={inputs.runs === undefined ? undefined : Number(inputs.runs)}
              onRuns={(runs) => change({ runs: asInput(runs) })}
              jobId={inputs.run}
              onStarted={(run) => changeAll({ run })}
            />
          )}
          <Validity />
        </div>
      </div>
      <PhoneBar label={text('to-answer')} answer={answerPlace}>
        {prepared.job === undefined && text('missing')}
      </PhoneBar>
    </>
  );
}
