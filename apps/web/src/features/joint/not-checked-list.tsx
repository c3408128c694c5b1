import type { NotChecked } from '@seatwell/workflow';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';

/** The limits that a window does not hold, each with what nobody has said: nothing is left out in silence. */
export function NotCheckedList({ list }: { readonly list: readonly NotChecked[] | undefined }) {
  const text = useText('joint');
  if (!list || list.length === 0) return null;
  return (
    <Notice title={text('not-checked')}>
      <ul>
        {list.map(({ limit, missing }) => (
          <li key={limit}>
            {text('not-checked-item', {
              limit: text(`unchecked-${limit}`),
              missing: missing.map((each) => text(`missing-${each}`)).join(', '),
            })}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
