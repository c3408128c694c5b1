import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import { Notice } from '../../ui/notice.tsx';

export interface ZeroProps {
  readonly title: string;
  readonly items: readonly { key: string; href: string | undefined; label: string; detail: string }[];
  /** counted and shown, but it does not stop the hand-over */
  readonly soft?: boolean;
}

/** Something that must be zero, and by name what stands against it. */
export function Zero({ title, items, soft = false }: ZeroProps) {
  const text = useText('handover');
  if (items.length === 0) return <p>{text('is-zero', { what: title })}</p>;
  return (
    <Notice kind={soft ? 'info' : 'attention'} title={title}>
      <ul>
        {items.map((item) => (
          <li key={item.key}>
            {item.href === undefined ? <strong>{item.label}</strong> : <Link href={item.href}>{item.label}</Link>}
            {item.detail !== '' && ` · ${item.detail}`}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
