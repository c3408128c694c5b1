import type { ShutdownEventType, ShutdownPayload } from '@seatwell/contract';
import { useState } from 'react';
import { type FactAnswer, useFactCommand } from '../../offline/use-fact-command.ts';
import { useText } from '../../texts/text-provider.tsx';
import { useAnnouncer } from '../../ui/toast.tsx';
import { useFromPaper } from './paper-form.tsx';

export interface FactOptions {
  readonly performedBy?: readonly string[];
  readonly signature?: { readonly secret: string; readonly meaning: string };
  readonly at?: Date;
}

export interface Fact<Payload> {
  readonly record: (payload: Payload, options?: FactOptions) => void;
  /** records what was refused last as already done: it is kept and waits for review */
  readonly keepForReview: () => void;
  readonly busy: boolean;
  readonly error: unknown;
  readonly reset: () => void;
}

/** Records a fact about a joint and says what became of it. */
export function useFact<T extends ShutdownEventType>(
  type: T,
  subject: {
    readonly jointId: string;
    readonly makeId: string | null;
    readonly tag: string;
    /** what the fact is about, where that is not the joint itself */
    readonly subjectId?: string;
  },
  onDone: (answer: FactAnswer) => void,
): Fact<ShutdownPayload<T>> {
  const text = useText('work');
  const waits = useText('offline');
  const { toast, announce } = useAnnouncer();
  const command = useFactCommand(type);
  const paper = useFromPaper();
  const [last, setLast] = useState<{ payload: ShutdownPayload<T>; options: FactOptions } | null>(null);

  const send = (payload: ShutdownPayload<T>, options: FactOptions, alreadyDone: boolean) => {
    setLast({ payload, options });
    const { jointId, makeId, tag, subjectId = jointId } = subject;
    command.mutate(
      { subjectId, makeId, label: tag, lane: jointId, payload, alreadyDone, ...options, ...paper },
      {
        onSuccess: (answer) => {
          // The screen itself shows the next stage; only what does not move on needs words that stay.
          if (answer.disposition === 'waiting') toast({ message: waits('kept-here') });
          else if (answer.disposition === 'applied') announce(text('recorded'));
          onDone(answer);
        },
      },
    );
  };
  return {
    record: (payload, options = {}) => send(payload, options, false),
    keepForReview: () => last && send(last.payload, last.options, true),
    busy: command.isPending,
    error: command.error,
    reset: command.reset,
  };
}
