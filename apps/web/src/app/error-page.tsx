import { useQueryErrorResetBoundary } from '@tanstack/react-query';
import { type ErrorComponentProps, useRouter } from '@tanstack/react-router';
import { useEffect } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { Button } from '../ui/button.tsx';
import { Link } from '../ui/link.tsx';
import { PageHeader } from '../ui/page-header.tsx';
import { ErrorNotice } from './error-notice.tsx';

/** What stands in place of a page that could not be shown. */
export function ErrorPage({ error }: ErrorComponentProps) {
  const text = useText('app');
  const router = useRouter();
  const boundary = useQueryErrorResetBoundary();
  useEffect(() => boundary.reset(), [boundary]);
  return (
    <>
      <PageHeader title={text('page-failed')} />
      <ErrorNotice
        error={error}
        actions={<Button onClick={() => void router.invalidate()}>{text('try-again')}</Button>}
      />
    </>
  );
}

/** What stands at an address that leads nowhere. */
export function NotFoundPage() {
  const text = useText('app');
  return (
    <>
      <PageHeader title={text('not-found')} />
      <p>{text('not-found-detail')}</p>
      <p>
        <Link href="/">{text('to-start')}</Link>
      </p>
    </>
  );
}
