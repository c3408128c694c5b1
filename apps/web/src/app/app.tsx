import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { TextProvider } from '../texts/text-provider.tsx';
import { AppProviders } from '../ui/app-providers.tsx';
import { LinkContext } from '../ui/link.tsx';
import { addresses } from './addresses.ts';
import { createQueryClient } from './query-client.ts';
import { createAppRouter } from './router.tsx';
import { RouterLink } from './router-link.tsx';
import { sessionQuery } from './session.ts';

const queries = createQueryClient(() => {
  const { pathname, href } = router.state.location;
  if (pathname === '/sign-in' || pathname === '/first-visit') return;
  // Whoever was signed in on this page is asked for the password where it stands (sign-in-again.tsx).
  if (!queries.getQueryData(sessionQuery.queryKey)) router.history.push(addresses.signIn(href));
});
const router = createAppRouter(queries);

/** Everything that the pages need above them. */
export function App() {
  return (
    <TextProvider>
      <QueryClientProvider client={queries}>
        <AppProviders>
          <LinkContext value={RouterLink}>
            <RouterProvider router={router} />
          </LinkContext>
        </AppProviders>
      </QueryClientProvider>
    </TextProvider>
  );
}
