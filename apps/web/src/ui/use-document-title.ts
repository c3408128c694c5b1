import { useEffect } from 'react';

/** Title of the browser's tab: what the page is about, then the product. */
export function useDocumentTitle(title: string): void {
  useEffect(() => {
    document.title = `${title} · Seatwell`;
  }, [title]);
}
