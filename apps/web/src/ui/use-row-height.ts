import { useTheme } from './theme.tsx';
import { useMediaQuery } from './use-media-query.ts';

/** Height of a table row in px: the same as --row in styles/measures.css. */
export function useRowHeight(): number {
  const { glove } = useTheme();
  const touch = useMediaQuery('(pointer: coarse), (max-width: 48rem)');
  if (glove) return 64;
  return touch ? 48 : 38;
}
