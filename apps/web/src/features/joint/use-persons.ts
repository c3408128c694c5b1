import type { JointPage } from '@seatwell/contract';
import { useCallback } from 'react';
import { useText } from '../../texts/text-provider.tsx';

/** Names of persons that state and history speak of; an erased name is said to be so. */
export function usePersons(page: JointPage): (personIds: readonly string[]) => string {
  const text = useText('joint');
  const { names } = page;
  return useCallback(
    (personIds) => personIds.map((personId) => names[personId] ?? text('name-erased')).join(', '),
    [names, text],
  );
}
