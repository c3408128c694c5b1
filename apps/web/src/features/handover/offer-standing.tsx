import type { SystemPage } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Notice } from '../../ui/notice.tsx';

/** The offer that stands: who offered the system, when, and with which exceptions. */
export function OfferStanding({ offer }: { readonly offer: NonNullable<SystemPage['offer']> }) {
  const text = useText('handover');
  const format = useFormat();
  const who = offer.by?.name ?? text('offered-by-nobody');
  return (
    <Notice title={text('offered-title', { who, when: format.dayTime(offer.at) })}>
      {offer.exceptions.length === 0 ? (
        <p>{text('offered-no-exception')}</p>
      ) : (
        <>
          <p>{text('offered-exceptions')}</p>
          <ul>
            {offer.exceptions.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </>
      )}
      <p>{text('offered-next')}</p>
    </Notice>
  );
}
