import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { SetValue } from './set-value.tsx';

/** An elongation as a length gauge reads it: to a thousandth of a millimetre, ten thousandths of an inch; held in mm. */
export function useReadStretch(): (elongation_mm: number) => number {
  const format = useFormat();
  const decimals = format.unit('gap') === 'in' ? 4 : 3;
  return (held) => format.toHeld('gap', Number(format.toShown('gap', held).toFixed(decimals)));
}

/** How far each bolt is stretched in this pass, over its measured length before it was loaded. */
export function StretchTo({ elongation_mm }: { readonly elongation_mm: number }) {
  const text = useText('tightening');
  const format = useFormat();
  const value = Number(format.toShown('gap', useReadStretch()(elongation_mm)).toPrecision(9));
  return (
    <section aria-label={text('stretch-to')}>
      <h2>{text('stretch-to')}</h2>
      <SetValue set={{ elongation_mm, asEntered: { value, unit: format.unit('gap') } }} />
      <p>{text('stretch-detail')}</p>
    </section>
  );
}
