import type { UseInfiniteQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Skeleton } from '../../ui/skeleton.tsx';
import styles from './import.module.css';

interface Pages<Row> {
  readonly pages: readonly { readonly rows: readonly Row[]; readonly next: string | null }[];
}

/** Rows that come page by page, with a button for the next. */
export function Paged<Row>(props: {
  readonly query: UseInfiniteQueryResult<Pages<Row>>;
  readonly children: (rows: readonly Row[]) => ReactNode;
}) {
  const text = useText('import');
  const { query } = props;
  if (query.error) return <ErrorNotice error={query.error} />;
  if (!query.data) return <Skeleton lines={4} />;
  return (
    <div className={styles.section}>
      {props.children(query.data.pages.flatMap((page) => page.rows))}
      {query.hasNextPage && (
        <Button busy={query.isFetchingNextPage} onClick={() => void query.fetchNextPage()}>
          {text('more-rows')}
        </Button>
      )}
    </div>
  );
}
