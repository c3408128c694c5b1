import { addresses } from '../../app/addresses.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { Link } from '../../ui/link.tsx';
import type { SignRow } from './sign-row.ts';
import styles from './signing.module.css';

export interface JointTicksProps {
  readonly rows: readonly SignRow[];
  readonly ticked: ReadonlySet<string>;
  readonly onChange: (ticked: ReadonlySet<string>) => void;
}

/** The joints of a list, to tick one by one or all; each leads to its page. */
export function JointTicks({ rows, ticked, onChange }: JointTicksProps) {
  const text = useText('signing');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const tick = (jointId: string, on: boolean) => {
    const next = new Set(ticked);
    if (on) next.add(jointId);
    else next.delete(jointId);
    onChange(next);
  };
  return (
    <fieldset className={styles.group}>
      <legend>
        {text('ticked', { count: rows.length, ticked: format.count(ticked.size), joints: format.count(rows.length) })}
      </legend>
      <div className={styles.all}>
        <Button onClick={() => onChange(new Set(rows.map((row) => row.jointId)))}>{text('tick-all')}</Button>
        <Button onClick={() => onChange(new Set())}>{text('tick-none')}</Button>
      </div>
      <ul className={styles.list}>
        {rows.map((row) => (
          <li key={row.jointId}>
            <Checkbox
              label={row.tag}
              detail={row.detail}
              checked={ticked.has(row.jointId)}
              onChange={(on) => tick(row.jointId, on)}
            />
            <Link href={addresses.joint(shutdownId, row.jointId)}>{text('look')}</Link>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
