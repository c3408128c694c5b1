/** What a key does, in the catalogue `keys`, and the key or keys as they are written on the board. */
export interface KeyLine {
  readonly keys: readonly (readonly string[])[];
  readonly meaning: Meaning;
}

export interface KeyGroup {
  readonly title: 'everywhere' | 'table' | 'sentence' | 'search' | 'list' | 'tabs' | 'choice' | 'slider' | 'fold';
  readonly lines: readonly KeyLine[];
}

type Meaning =
  | `everywhere-${'go-on' | 'go-back' | 'follow' | 'press' | 'close' | 'skip' | 'find' | 'help'}`
  | `table-${'move' | 'page' | 'ends' | 'open' | 'tick' | 'tick-range' | 'sort'}`
  | `sentence-${'open' | 'tick' | 'close'}`
  | `search-${'open' | 'move' | 'take' | 'leave'}`
  | 'list-move'
  | 'tabs-move'
  | 'choice-move'
  | `slider-${'move' | 'ends'}`
  | 'fold-open';

const line = (meaning: Meaning, ...keys: readonly (readonly string[])[]): KeyLine => ({ keys, meaning });

const upAndDown = [['ArrowUp'], ['ArrowDown']] as const;
const leftAndRight = [['ArrowLeft'], ['ArrowRight']] as const;
const rightAndLeft = [['ArrowRight'], ['ArrowLeft']] as const;

/**
 * The keys that work on a page, by what stands on it: nobody keeps a list for each page that could go stale.
 * @param page the element that holds the page, without the navigation
 * @param direction which way the page is written: what comes next stands on the left of a page from right to left
 */
export function keysOfPage(page: ParentNode, direction: 'ltr' | 'rtl' = 'ltr'): readonly KeyGroup[] {
  const backAndOn = direction === 'rtl' ? rightAndLeft : leftAndRight;
  const has = (selector: string) => page.querySelector(selector) !== null;
  const everywhere = [
    line('everywhere-go-on', ['Tab']),
    line('everywhere-go-back', ['Shift', 'Tab']),
    line('everywhere-skip', ['Tab'], ['Enter']),
    line('everywhere-follow', ['Enter']),
    line('everywhere-press', ['Space']),
    line('everywhere-close', ['Escape']),
    ...(has(searchField) ? [line('everywhere-find', ['/'])] : []),
    line('everywhere-help', ['?']),
  ];
  const table = [
    line('table-move', ...upAndDown),
    line('table-page', ['PageUp'], ['PageDown']),
    line('table-ends', ['Home'], ['End']),
    ...(has('[role=grid] [data-opens]') ? [line('table-open', ['Enter'])] : []),
    ...(has('[role=grid][aria-multiselectable]')
      ? [line('table-tick', ['Space']), line('table-tick-range', ['Shift', 'Space'])]
      : []),
    ...(has('[role=grid] [role=columnheader] button') ? [line('table-sort', ['Enter'])] : []),
  ];
  const groups: readonly (KeyGroup & { readonly stands: boolean })[] = [
    { title: 'everywhere', stands: true, lines: everywhere },
    { title: 'table', stands: has('[role=grid]'), lines: table },
    {
      title: 'sentence',
      stands: has('search [aria-haspopup=dialog]'),
      lines: [line('sentence-open', ['Enter']), line('sentence-tick', ['Space']), line('sentence-close', ['Escape'])],
    },
    {
      title: 'search',
      stands: has('[role=combobox]'),
      lines: [
        line('search-open', ['ArrowDown']),
        line('search-move', ...upAndDown),
        line('search-take', ['Enter']),
        line('search-leave', ['Escape']),
      ],
    },
    { title: 'list', stands: has('select'), lines: [line('list-move', ...upAndDown)] },
    { title: 'tabs', stands: has('[role=tablist]'), lines: [line('tabs-move', ...backAndOn)] },
    { title: 'choice', stands: has('input[type=radio]'), lines: [line('choice-move', ...upAndDown)] },
    {
      title: 'slider',
      stands: has('input[type=range]'),
      lines: [line('slider-move', ...backAndOn), line('slider-ends', ['Home'], ['End'])],
    },
    { title: 'fold', stands: has('summary'), lines: [line('fold-open', ['Enter'])] },
  ];
  return groups.filter(({ stands }) => stands).map(({ title, lines }) => ({ title, lines }));
}

/** The field in which one looks something up; only one that can be typed into. */
export const searchField = 'input[type=search]:not(:disabled)';
