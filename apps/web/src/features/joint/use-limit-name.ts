import jointTexts from '../../texts/en/joint.json';
import { useText } from '../../texts/text-provider.tsx';
import type { TextKey } from '../../texts/translate.ts';

const known: ReadonlySet<string> = new Set(Object.keys(jointTexts));

/** The name of a limit of the window; one that is new to this screen is shown as the calculation names it. */
export function useLimitName(): (name: string) => string {
  const text = useText('joint');
  return (name) => {
    const key = `limit-${name}`;
    return known.has(key) ? text(key as TextKey<'joint'>) : name.replaceAll('-', ' ');
  };
}
