import type { ReactNode, RefObject } from 'react';
import { Button } from '../../ui/button.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { phoneQuery, useMediaQuery } from '../../ui/use-media-query.ts';

interface Props {
  /** what comes out, in few words */
  readonly children: ReactNode;
  readonly label: string;
  readonly answer: RefObject<HTMLElement | null>;
}

/** On a phone the answer stands far below the inputs: what comes out and the way to it stay at the thumb. */
export function PhoneBar({ children, label, answer }: Props) {
  const phone = useMediaQuery(phoneQuery);
  if (!phone) return null;
  const show = () => {
    answer.current?.scrollIntoView({ block: 'start' });
    answer.current?.focus({ preventScroll: true });
  };
  return (
    <StickyActionBar
      actions={
        <Button kind="primary" onClick={show}>
          {label}
        </Button>
      }
    >
      {children}
    </StickyActionBar>
  );
}
