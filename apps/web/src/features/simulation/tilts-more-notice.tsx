import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';
import { tiltsMore } from './tilts-more.ts';

interface Props {
  readonly tilt_mm: number | undefined;
  /** of the usual passes */
  readonly usual_mm: number;
}

/** Where computed loads tilt the flange much more on their way than the usual passes. */
export function TiltsMoreNotice({ tilt_mm, usual_mm }: Props) {
  const text = useText('simulation');
  if (!tiltsMore(tilt_mm, usual_mm)) return null;
  return (
    <Notice kind="attention" title={text('tilts-more')}>
      <p>{text('tilts-more-detail')}</p>
    </Notice>
  );
}
