import { STAGES, type Stage } from '@seatwell/contract';
import { useText } from '../../texts/text-provider.tsx';

/** The name of a stage as it came from the server. */
export function useStageName(): (stage: string | null) => string {
  const text = useText('import');
  const trade = useText('trade');
  return (stage) => {
    const known = STAGES.find((each) => each === stage);
    return known ? trade(`stage-${known satisfies Stage}`) : text('nothing');
  };
}
