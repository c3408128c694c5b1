import offlineTexts from '../texts/en/offline.json';
import { useText } from '../texts/text-provider.tsx';
import type { TextKey } from '../texts/translate.ts';

/** The word for a fact that waits. */
export function useEventName(): (type: string) => string {
  const text = useText('offline');
  return (type) => {
    const key = `event-${type}`;
    return Object.hasOwn(offlineTexts, key) ? text(key as TextKey<'offline'>) : type.replaceAll('-', ' ');
  };
}
