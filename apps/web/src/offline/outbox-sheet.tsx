import { useState } from 'react';
import { addresses } from '../app/addresses.ts';
import { ApiProblem } from '../app/api-problem.ts';
import { useProblemDetails } from '../app/error-notice.tsx';
import { useSigner } from '../app/sign.ts';
import { useGo } from '../app/use-go.ts';
import { useFormat } from '../format/format-provider.tsx';
import { useText } from '../texts/text-provider.tsx';
import { Button } from '../ui/button.tsx';
import { Sheet } from '../ui/dialog.tsx';
import { Problem } from '../ui/problem.tsx';
import { SignDialog } from '../ui/sign-dialog.tsx';
import styles from './offline.module.css';
import { outbox } from './outbox.ts';
import { type KeptProblem, type QueuedFact, withWhatFollows } from './queued-fact.ts';
import { useEventName } from './use-event-name.ts';
import { useOutbox } from './use-outbox.ts';

/** Everything that waits on this device, each with its state and the ways on. */
export function OutboxSheet({ open, onOpenChange }: { open: boolean; onOpenChange: (open: boolean) => void }) {
  const text = useText('offline');
  const { facts, sending } = useOutbox();
  const [signing, setSigning] = useState<QueuedFact | null>(null);
  return (
    <>
      <Sheet
        open={open && signing === null}
        onOpenChange={onOpenChange}
        title={text('list-title')}
        description={text('list-sub')}
        actions={
          <Button kind="primary" busy={sending} onClick={() => void outbox.flush()}>
            {text('send-now')}
          </Button>
        }
      >
        <ul className={styles.list}>
          {facts.map((fact) => (
            <Waiting
              key={fact.eventId}
              fact={fact}
              onSign={() => setSigning(fact)}
              onLeave={() => onOpenChange(false)}
            />
          ))}
        </ul>
      </Sheet>
      {signing && <SignNow fact={signing} onClose={() => setSigning(null)} />}
    </>
  );
}

function Waiting({ fact, onSign, onLeave }: { fact: QueuedFact; onSign: () => void; onLeave: () => void }) {
  const text = useText('offline');
  const format = useFormat();
  const go = useGo();
  const name = useEventName();
  const problem = useProblemDetails();
  const { facts } = useOutbox();
  const behind = facts.find((each) => each.lane === fact.lane)?.eventId !== fact.eventId;
  const follow = withWhatFollows(facts, fact.eventId).length - 1;
  const state = behind && fact.state === 'waiting' ? 'behind' : fact.state;
  const why = fact.problem && problem(new ApiProblem(fact.problem));
  const back = async () => {
    await outbox.withdraw(fact.eventId);
    onLeave();
    if (fact.command.makeId !== null) go(addresses.work(fact.shutdownId, fact.lane));
  };
  return (
    <li className={styles.fact}>
      <div>
        <strong>{fact.label}</strong>
        {` · ${name(fact.type)}, ${text('said-at', { when: format.dayTime(fact.command.deviceTime) })}`}
      </div>
      <span className={styles.state} data-state={state}>
        {text(`state-${state}`)}
      </span>
      {why && <Problem problem={why} />}
      {fact.state === 'to-sign' && !behind && (
        <span className={styles.buttons}>
          <Button onClick={onSign}>{text('sign-now')}</Button>
        </span>
      )}
      {fact.state === 'refused' && (
        <>
          <span className={styles.buttons}>
            {fact.problem?.code === 'rules-not-met' && (
              <Button onClick={() => void outbox.sendAsAlreadyDone(fact.eventId)}>{text('already-done')}</Button>
            )}
            <Button onClick={() => void back()}>{text('enter-anew')}</Button>
          </span>
          <p className={styles.soft}>
            {text(follow > 0 ? 'enter-anew-means' : 'enter-anew-alone', { count: format.count(follow) })}
          </p>
        </>
      )}
    </li>
  );
}

function SignNow({ fact, onClose }: { fact: QueuedFact; onClose: () => void }) {
  const text = useText('offline');
  const signer = useSigner('technician', 'chargehand', 'inspector');
  const name = useEventName();
  const details = useProblemDetails();
  const [problem, setProblem] = useState<KeptProblem | null>(null);
  const { sending } = useOutbox();
  const sign = async (secret: string) => {
    const said = await outbox.sign(fact.eventId, secret);
    if (said.kind === 'refused') setProblem(said.problem);
    else onClose();
  };
  return (
    <SignDialog
      open
      onOpenChange={(open) => open || onClose()}
      title={text('sign-title')}
      meaning={fact.meaning ?? ''}
      signer={signer}
      items={[{ id: fact.eventId, label: fact.label, detail: name(fact.type) }]}
      signLabel={text('sign-now')}
      busy={sending}
      problem={problem === null ? undefined : details(new ApiProblem(problem))}
      onSign={({ secret }) => void sign(secret)}
    />
  );
}
