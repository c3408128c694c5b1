import { useSuspenseQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { recordHeadQuery } from '../../app/reads.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import styles from './report.module.css';

/** The head of the record behind the figures, for a client's witness to keep: on the paper, or signed as a file. */
export function RecordHead({ shutdownId }: { shutdownId: string }) {
  const text = useText('report');
  const format = useFormat();
  const { data: head } = useSuspenseQuery(recordHeadQuery(shutdownId));
  return (
    <section className={styles.meaning}>
      <h2>{text('record')}</h2>
      <KeyValues
        items={[
          { name: text('record-events'), value: format.count(head.sequence) },
          { name: text('record-head'), value: <code className={styles.long}>{head.root}</code> },
          ...(head.fingerprint === null
            ? []
            : [
                {
                  name: text('record-key'),
                  value: (
                    <code dir="ltr" className={styles.long}>
                      {head.fingerprint}
                    </code>
                  ),
                },
              ]),
        ]}
      />
      <p className={styles.soft}>
        {text('record-detail')}{' '}
        {head.fingerprint === null ? (
          text('record-unsigned')
        ) : (
          <a href={addresses.signedHead(shutdownId)} download>
            {text('signed-head')}
          </a>
        )}
      </p>
    </section>
  );
}
