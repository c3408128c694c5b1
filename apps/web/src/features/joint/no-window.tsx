import { useSaid } from '../../app/use-said.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';
import { useLimitName } from './use-limit-name.ts';

interface Props {
  readonly window: {
    readonly open: boolean;
    readonly shortfall_MPa?: number | undefined;
    readonly remedies?: readonly { readonly code: string; readonly message: string }[] | undefined;
  };
}

/** Where no target lies within all limits: by how much they cross, and what could change. */
export function NoWindow({ window }: Props) {
  const text = useText('joint');
  const format = useFormat();
  const said = useSaid('calculation', useLimitName());
  if (window.open) return null;
  return (
    <Notice kind="stop" title={text('no-window', { short: format.quantity('stress', window.shortfall_MPa ?? null) })}>
      <p>{text('no-window-detail')}</p>
      <ul>
        {(window.remedies ?? []).map((remedy) => (
          <li key={remedy.code}>{said(remedy)}</li>
        ))}
      </ul>
    </Notice>
  );
}
