import type { TargetElongation } from '@seatwell/workflow';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';

/** How far each bolt is stretched, over which length and with which modulus, in one line. */
export function useElongationWords(): (elongation: TargetElongation) => string {
  const text = useText('engineering');
  const format = useFormat();
  return ({ elongation_mm, effectiveLength_mm, elasticModulus_MPa }) =>
    text('elongation-over', {
      elongation: format.quantity('gap', elongation_mm),
      length: format.quantity('length', effectiveLength_mm),
      modulus: format.quantity('stress', elasticModulus_MPa),
    });
}
