import { Dialog as Primitive } from 'radix-ui';
import { type ReactNode, useRef } from 'react';
import { useText } from '../texts/text-provider.tsx';
import styles from './dialog.module.css';

export interface DialogProps {
  readonly open: boolean;
  readonly onOpenChange: (open: boolean) => void;
  readonly title: string;
  readonly description?: string | undefined;
  readonly children: ReactNode;
  /** buttons at the foot, the primary one last */
  readonly actions?: ReactNode;
  readonly wide?: boolean;
}

/** A question that must be answered before going on. Focus stays inside; Escape closes. */
export function Dialog(props: DialogProps) {
  return <Panel {...props} className={styles.dialog ?? ''} />;
}

/** Work beside the page: from the side at the desk, from below on a phone. */
export function Sheet(props: DialogProps) {
  return <Panel {...props} className={styles.sheet ?? ''} />;
}

function Panel(props: DialogProps & { className: string }) {
  const text = useText('ui');
  const opener = useRef<HTMLElement | null>(null);
  // The primitive gives the focus back to its own trigger only, and our dialogs are opened from anywhere.
  const remember = (event: Event) => {
    const focused = document.activeElement;
    const inside = event.currentTarget instanceof Node && event.currentTarget.contains(focused);
    if (focused instanceof HTMLElement && !inside) opener.current = focused;
  };
  const giveBack = (event: Event) => {
    event.preventDefault();
    opener.current?.focus();
  };
  return (
    <Primitive.Root open={props.open} onOpenChange={props.onOpenChange}>
      <Primitive.Portal>
        {/* Not the primitive's overlay: it locks scrolling by a style element, which our content policy forbids. */}
        <div className={styles.veil} />
        <Primitive.Content
          className={props.className}
          onOpenAutoFocus={remember}
          onCloseAutoFocus={giveBack}
          data-wide={props.wide ? '' : undefined}
          {...(props.description === undefined ? { 'aria-describedby': undefined } : {})}
        >
          <div className={styles.head}>
            <div>
              <Primitive.Title className={styles.title}>{props.title}</Primitive.Title>
              {props.description !== undefined && (
                <Primitive.Description className={styles.description}>{props.description}</Primitive.Description>
              )}
            </div>
            <Primitive.Close className={styles.close} aria-label={text('close')}>
              <span aria-hidden="true">×</span>
            </Primitive.Close>
          </div>
          <div className={styles.body}>{props.children}</div>
          {props.actions !== undefined && <div className={styles.actions}>{props.actions}</div>}
        </Primitive.Content>
      </Primitive.Portal>
    </Primitive.Root>
  );
}
