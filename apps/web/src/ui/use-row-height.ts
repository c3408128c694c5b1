import { useTheme } from './theme.tsx';
import { useMediaQuery } from './use-media-query.ts';

/** Height of a table row in px: the same as --row in styles/measures.css. */
export function useRowHeight(): number {
  const { glove } = useTheme();
  const touch = useMediaQuery('(pointer: coarse), (max-width: 48rem)');
  const letters_px = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return Math.max(glove ? 64 : touch ? 48 : 38, 2.25 * letters_px);
}
