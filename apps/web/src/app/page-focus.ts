import type { AnyRouter } from '@tanstack/react-router';

/** After going to another page, focus stands on its title and the page at its top, so that it is read out first. */
export function focusTitleOnNavigation(router: AnyRouter): void {
  router.subscribe('onRendered', ({ fromLocation, pathChanged }) => {
    if (!fromLocation || !pathChanged) return;
    const title = document.querySelector<HTMLElement>('#page h1');
    // Who comes back to a long table stands on the row that was opened.
    if (!title || document.activeElement?.closest('#page [role=row]')) return;
    title.tabIndex = -1;
    title.focus({ preventScroll: true });
  });
}
