import { type MouseEvent, type ReactNode, type Ref, useId } from 'react';
import { useText } from '../texts/text-provider.tsx';
import styles from './button.module.css';
import { classNames } from './class-names.ts';
import { VisuallyHidden } from './visually-hidden.tsx';

export interface ButtonProps {
  readonly children: ReactNode;
  readonly onClick?: ((event: MouseEvent<HTMLButtonElement>) => void) | undefined;
  readonly kind?: 'primary' | 'plain' | 'quiet' | 'stop';
  readonly size?: 'normal' | 'large';
  readonly type?: 'button' | 'submit';
  readonly wide?: boolean;
  /** why it cannot be used now: shown under the button, which stays in place and reachable */
  readonly disabledReason?: string | undefined;
  /** the action runs: further presses do nothing */
  readonly busy?: boolean;
  readonly label?: string;
  readonly expanded?: boolean;
  readonly pressed?: boolean;
  readonly ref?: Ref<HTMLButtonElement>;
}

/** A button. It is never hidden: where it cannot be used it says why. At most one primary on a phone's screen. */
export function Button(props: ButtonProps) {
  const text = useText('ui');
  const reasonId = useId();
  const { disabledReason, busy = false, kind = 'plain', size = 'normal' } = props;
  const disabled = disabledReason !== undefined || busy;

  const press = (event: MouseEvent<HTMLButtonElement>) => {
    // aria-disabled keeps the button in the tab order, so that its reason can be found and read.
    if (disabled) event.preventDefault();
    else props.onClick?.(event);
  };

  return (
    <span className={classNames(styles.wrap, props.wide && styles.wide)}>
      <button
        ref={props.ref}
        type={props.type ?? 'button'}
        className={classNames(styles.button, kind !== 'plain' && styles[kind], size === 'large' && styles.large)}
        aria-disabled={disabled || undefined}
        aria-busy={busy || undefined}
        aria-label={props.label}
        aria-expanded={props.expanded}
        aria-pressed={props.pressed}
        aria-describedby={disabledReason === undefined ? undefined : reasonId}
        onClick={press}
      >
        {busy && <span className={styles.spinner} aria-hidden="true" />}
        {props.children}
        {busy && <VisuallyHidden>{text('working')}</VisuallyHidden>}
      </button>
      {disabledReason !== undefined && (
        <span id={reasonId} className={styles.reason}>
          {disabledReason}
        </span>
      )}
    </span>
  );
}
