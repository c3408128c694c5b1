import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';

/** What is looked at before a tensioner is pressurised. */
export function TensionerCautions({ protrusion_mm }: { readonly protrusion_mm: number }) {
  const text = useText('tightening');
  const format = useFormat();
  return (
    <Notice kind="attention" title={text('tensioner-fire-line')}>
      <p>{text('tensioner-protrusion', { length: format.quantity('gap', protrusion_mm) })}</p>
    </Notice>
  );
}
