import { useDeferredValue, useMemo, useRef } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useGo } from '../../app/use-go.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { useAnnouncer } from '../../ui/toast.tsx';
import { calculate, isRefused } from './answer.ts';
import { CalculateWays } from './calculate-ways.tsx';
import styles from './calculator.module.css';
import { example } from './example.ts';
import { EnteringProvider } from './fields.tsx';
import { type Inputs, readInputs } from './inputs.ts';
import { BoltingInputs, FlangeInputs, GasketInputs, ServiceInputs } from './joint-inputs.tsx';
import { PhoneBar } from './phone-bar.tsx';
import { PrintedInputs } from './printed-inputs.tsx';
import { Missing, Refused } from './refused.tsx';
import { SequenceAnswer } from './sequence-answer.tsx';
import { TargetAnswerView } from './target-answer.tsx';
import { useAddressInputs } from './use-inputs.ts';
import { LubricantInputs, MethodInputs, PolicyInputs, SequenceInputs } from './work-inputs.tsx';

const addressOf = (inputs: Inputs) => addresses.calculate(inputs);

/** The calculation by itself: no register needed. Inputs at the left, what they come to at the right. */
export function CalculatorPage() {
  const text = useText('calculator');
  const format = useFormat();
  const go = useGo();
  const { inputs, change, setInputs } = useAddressInputs(readInputs, addressOf);
  const settled = useDeferredValue(inputs);
  const answer = useMemo(() => calculate(settled), [settled]);
  const { target, sequence } = answer;
  const answerPlace = useRef<HTMLDivElement>(null);
  const good = target !== undefined && !isRefused(target) ? target : undefined;
  const torque = good?.tool.torque_Nm;
  return (
    <>
      <PageHeader
        over={<CalculateWays />}
        title={good ? text('title-answer', { set: format.quantity('torque', torque ?? null) }) : text('title')}
        documentTitle={text('calculate')}
        sub={text('sub')}
        actions={
          <>
            <Button onClick={() => window.print()}>{text('print')}</Button>
            <CopyLink address={addressOf(inputs)} />
            <Button
              disabledReason={
                inputs.standard === undefined || inputs.standard === 'custom' ? text('simulate-needs') : undefined
              }
              onClick={() => go(addresses.simulate(simulationInputs(inputs, good?.target.boltStress_MPa)))}
            >
              {text('simulate')}
            </Button>
          </>
        }
      />
      <div className={styles.page}>
        <EnteringProvider value={{ inputs, change }}>
          <form className={styles.inputs} onSubmit={(event) => event.preventDefault()} aria-label={text('inputs')}>
            {Object.keys(inputs).length === 0 && <Button onClick={() => setInputs(example)}>{text('example')}</Button>}
            <FlangeInputs />
            <GasketInputs />
            <BoltingInputs />
            <ServiceInputs />
            <LubricantInputs />
            <MethodInputs />
            <PolicyInputs />
            <SequenceInputs />
          </form>
        </EnteringProvider>
        <PrintedInputs inputs={settled} />
        <div className={styles.answer} ref={answerPlace} tabIndex={-1}>
          {answer.missing.length > 0 && <Missing names={answer.missing} />}
          {target !== undefined && isRefused(target) && (
            <Refused title={text('refused-target')} items={target.refused} />
          )}
          {good && <TargetAnswerView answer={good} inputs={settled} />}
          {sequence !== undefined &&
            (isRefused(sequence) ? (
              <Refused title={text('refused-sequence')} items={sequence.refused} />
            ) : (
              <SequenceAnswer
                inputs={settled}
                sequence={sequence}
                setValue={torque === undefined ? undefined : [format.value('torque', torque), format.unit('torque')]}
              />
            ))}
          <p className={styles.soft}>{text('support')}</p>
        </div>
      </div>
      <PhoneBar label={text('to-answer')} answer={answerPlace}>
        {good
          ? text('set-to', { set: format.quantity('torque', torque ?? null) })
          : answer.missing.length > 0 && text('to-enter', { count: answer.missing.length })}
      </PhoneBar>
    </>
  );
}

/** What the simulation takes over from here. */
function simulationInputs(inputs: Inputs, stress_MPa: number | undefined) {
  const { standard, size, rating, boltCount, family, contactInside_mm, contactOutside_mm, area, pattern, tools } =
    inputs;
  return {
    standard,
    size,
    rating,
    boltCount,
    family,
    contactInside_mm,
    contactOutside_mm,
    area,
    stress_MPa,
    first: tools === undefined ? pattern : `${pattern} ${tools}`,
  };
}

function CopyLink({ address }: { address: string }) {
  const text = useText('calculator');
  const { toast } = useAnnouncer();
  // The clipboard is there on secure pages only; the address bar holds the inputs in any case.
  const copy = () => {
    const link = new URL(address, location.href).href;
    const copied = navigator.clipboard?.writeText(link) ?? Promise.reject(new Error('no clipboard'));
    copied.then(
      () => toast({ message: text('link-copied') }),
      () => toast({ message: text('link-in-address') }),
    );
  };
  return <Button onClick={copy}>{text('copy-link')}</Button>;
}
