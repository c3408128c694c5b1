import type { RefusalItem } from '@seatwell/calc';
import { useSaid } from '../../app/use-said.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';
import { inputOf } from './answer.ts';
import type { InputName } from './inputs.ts';

/** Why something cannot be calculated, with the name of the input that stands on the screen. */
export function Refused({ title, items }: { title: string; items: readonly RefusalItem[] }) {
  const text = useText('calculator');
  const said = useSaid('calculation');
  const named = (item: RefusalItem) => {
    const name = inputOf(item);
    return name === undefined ? said(item) : said(item).replaceAll(item.path, text(`input-${name}`));
  };
  return (
    <Notice kind="stop" title={title} live>
      <ul>
        {items.map((item) => (
          <li key={`${item.path} ${item.code}`}>{named(item)}</li>
        ))}
      </ul>
    </Notice>
  );
}

/** The inputs that are still missing, by their names. */
export function Missing({ names }: { names: readonly InputName[] }) {
  const text = useText('calculator');
  return (
    <Notice kind="info" title={text('missing', { count: names.length })}>
      <p>{names.map((name) => text(`input-${name}`)).join(' · ')}</p>
    </Notice>
  );
}
