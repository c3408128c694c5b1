import type { ProcedureContent } from '@seatwell/contract';
import { useText } from '../../texts/text-provider.tsx';

/** What a procedure says of its bolts in one line; where it says nothing, that coating and washers are not checked. */
export function useBoltsWords(): (bolts: ProcedureContent['bolts']) => string {
  const text = useText('engineering');
  const words = useText('calculator');
  return (bolts) =>
    bolts
      ? [
          words(`condition-${bolts.condition}`),
          bolts.coating?.name ?? text('bolts-bare'),
          `${words('input-washersPerBolt')}: ${bolts.washers?.perBolt ?? text('washers-none')}`,
        ].join(', ')
      : text('bolts-not-said');
}
