import { searchField } from './keys-of-page.ts';

const storageKey = 'seatwell.single-keys';

/**
 * Whether `?` and `/` do something by themselves on this device. Who speaks to the machine, or hits keys
 * by chance, switches them off (WCAG 2.2, 2.1.4); the button for the keys stays.
 */
export function singleKeysOn(): boolean {
  try {
    return localStorage.getItem(storageKey) !== 'off';
  } catch {
    return true;
  }
}

export function keepSingleKeys(on: boolean): void {
  try {
    localStorage.setItem(storageKey, on ? 'on' : 'off');
  } catch {
    // Nothing to keep it in: they stay as they are by default.
  }
}

/** What a single key asks for where it is pressed; undefined where it is typed into a field or belongs to a dialog. */
export function askedBy(event: KeyboardEvent): 'help' | 'find' | undefined {
  if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return undefined;
  if (event.key !== '?' && event.key !== '/') return undefined;
  if (!singleKeysOn() || document.querySelector('[role=dialog]') !== null) return undefined;
  if (event.target instanceof Element && event.target.closest('input, textarea, select, [contenteditable]')) {
    // A box or a button among choices takes no letters.
    if (!event.target.matches('input[type=checkbox], input[type=radio], input[type=range]')) return undefined;
  }
  return event.key === '?' ? 'help' : 'find';
}

/** Puts the cursor into the page's search field. @returns whether there is one */
export function goToSearch(): boolean {
  const field = document.querySelector<HTMLInputElement>(`#page ${searchField}`);
  field?.focus();
  field?.select();
  return field !== null;
}
