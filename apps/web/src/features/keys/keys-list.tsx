import { directionOf } from '@seatwell/contract';
import { Fragment, useState } from 'react';
import { useLanguage, useText } from '../../texts/text-provider.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { VisuallyHidden } from '../../ui/visually-hidden.tsx';
import styles from './keys.module.css';
import { keysOfPage } from './keys-of-page.ts';
import { keepSingleKeys, singleKeysOn } from './single-keys.ts';

// Arrows are drawn on the board, and not every font has them; the other keys have their name there.
const turned: Readonly<Record<string, number>> = { ArrowUp: 0, ArrowRight: 90, ArrowDown: 180, ArrowLeft: 270 };
const named = [
  'ArrowUp',
  'ArrowDown',
  'ArrowLeft',
  'ArrowRight',
  'Tab',
  'Shift',
  'Enter',
  'Space',
  'Escape',
  'PageUp',
  'PageDown',
  'Home',
  'End',
] as const;

/** The keys of the page that is open, by what stands on it, and whether single keys do anything. */
export function KeysList() {
  const text = useText('keys');
  const { language } = useLanguage();
  const [groups] = useState(() => keysOfPage(document.getElementById('page') ?? document, directionOf(language)));
  const [on, setOn] = useState(singleKeysOn);
  const nameOf = (key: string) => {
    const known = named.find((each) => each === key);
    return known ? text(`key-${known}`) : key;
  };
  return (
    <>
      {groups.map(({ title, lines }) => (
        <section key={title}>
          <h3 className={styles.title}>{text(title)}</h3>
          <dl className={styles.list}>
            {lines.map(({ meaning, keys }) => (
              <Fragment key={meaning}>
                <dt className={styles.keys}>
                  {keys.map((together) => (
                    <span key={together.join()} className={styles.together}>
                      {together.map((key) => (
                        <kbd key={key} className={styles.key}>
                          {turned[key] !== undefined ? (
                            <>
                              <Arrow turned={turned[key]} />
                              <VisuallyHidden>{nameOf(key)}</VisuallyHidden>
                            </>
                          ) : (
                            nameOf(key)
                          )}
                        </kbd>
                      ))}
                    </span>
                  ))}
                </dt>
                <dd>{text(meaning)}</dd>
              </Fragment>
            ))}
          </dl>
        </section>
      ))}
      <Checkbox
        label={text('single-keys')}
        detail={text('single-keys-detail')}
        checked={on}
        onChange={(next) => {
          setOn(next);
          keepSingleKeys(next);
        }}
      />
    </>
  );
}

function Arrow({ turned }: { turned: number }) {
  return (
    <svg viewBox="0 0 12 12" className={styles.arrow} aria-hidden="true">
      <path d="M6 11V1.5M2 5.5l4-4 4 4" transform={`rotate(${turned} 6 6)`} />
    </svg>
  );
}
