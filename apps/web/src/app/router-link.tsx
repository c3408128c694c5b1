import { useRouter } from '@tanstack/react-router';
import type { MouseEvent } from 'react';
import type { LinkProps } from '../ui/link.tsx';

/** A link of the app: the router follows it, unless it leads elsewhere or is wanted in another tab. */
export function RouterLink({ href, onClick, ...rest }: LinkProps) {
  const router = useRouter();
  const follow = (event: MouseEvent<HTMLAnchorElement>) => {
    onClick?.(event);
    const elsewhere = rest.target !== undefined || rest.download !== undefined || !href.startsWith('/');
    const apart = event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey;
    if (event.defaultPrevented || elsewhere || apart || href.startsWith('/api/')) return;
    event.preventDefault();
    router.history.push(href);
  };
  return <a {...rest} href={href} onClick={follow} />;
}
