import { useFormat } from '../format/format-provider.tsx';
import { useText } from '../texts/text-provider.tsx';
import { Notice } from '../ui/notice.tsx';
import type { QueuedFact } from './queued-fact.ts';
import { useEventName } from './use-event-name.ts';

/** What this device has said about a joint and the record has not got yet. */
export function QueuedNotice({ facts }: { facts: readonly QueuedFact[] }) {
  const text = useText('offline');
  const format = useFormat();
  const name = useEventName();
  if (facts.length === 0) return null;
  return (
    <Notice kind="attention" title={text('waits', { count: facts.length, facts: format.count(facts.length) })}>
      <ul>
        {facts.map((fact) => (
          <li key={fact.eventId}>
            {`${name(fact.type)}, ${text('said-at', { when: format.dayTime(fact.command.deviceTime) })}`}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
