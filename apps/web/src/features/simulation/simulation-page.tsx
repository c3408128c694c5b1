import { useCallback, useMemo, useRef, useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useSaid } from '../../app/use-said.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Notice } from '../../ui/notice.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { Skeleton } from '../../ui/skeleton.tsx';
import { CalculateWays } from '../calculator/calculate-ways.tsx';
import { PhoneBar } from '../calculator/phone-bar.tsx';
import { Refused } from '../calculator/refused.tsx';
import { useAddressInputs } from '../calculator/use-inputs.ts';
import { COMPUTED, readChoice, readSimulationInputs, readWay, type SimulationInputs, writeChoice } from './choices.ts';
import { jobOf } from './job.ts';
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
  const { inputs, change } = useAddressInputs(readSimulationInputs, addressOf);
  const first = readChoice(inputs.first, 'legacy');
  const second = readWay(inputs.second, 'circular');
  const prepared = useMemo(() => jobOf(inputs), [inputs]);
  const { answer, running, failed } = useSimulation(prepared.job);
  const [asTable, setAsTable] = useState(false);
  const answerPlace = useRef<HTMLDivElement>(null);
  const compare = useCallback((written: string) => change({ second: written }), [change]);
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
              <p>{prepared.refused?.map(said).join(' ') ?? text('missing-detail')}</p>
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
          <Validity />
        </div>
      </div>
      <PhoneBar label={text('to-answer')} answer={answerPlace}>
        {prepared.job === undefined && text('missing')}
      </PhoneBar>
    </>
  );
}
