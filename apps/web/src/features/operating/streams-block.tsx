import type { OperatorStatus } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Table } from '../../ui/table.tsx';
import styles from './operating.module.css';

const recordOf = ({ kind, streamId }: OperatorStatus['streams'][number]): string =>
  kind === 'site' ? addresses.siteRecord() : addresses.record(streamId);
const signedHeadOf = ({ kind, streamId }: OperatorStatus['streams'][number]): string =>
  kind === 'site' ? addresses.siteSignedHead() : addresses.signedHead(streamId);

/** The head of each stream, to be kept elsewhere, and the key that signs it. */
export function StreamsBlock({ streams, signing }: Pick<OperatorStatus, 'streams' | 'signing'>) {
  const text = useText('operating');
  const format = useFormat();
  return (
    <section className={styles.block}>
      <Table
        caption={text('streams')}
        rows={streams}
        rowKey={(stream) => stream.streamId}
        onPhone="cards"
        columns={[
          { key: 'name', header: text('stream'), rowHeader: true, cell: (stream) => stream.name },
          { key: 'events', header: text('events'), numeric: true, cell: (stream) => format.count(stream.sequence) },
          { key: 'changed', header: text('last'), cell: (stream) => format.dayTime(stream.changedAt) },
          {
            key: 'head',
            header: text('head'),
            cell: (stream) => <code className={styles.long}>{stream.root}</code>,
          },
          {
            key: 'download',
            header: text('action'),
            cell: (stream) => (
              <>
                <a href={recordOf(stream)} download aria-label={text('download-of', { name: stream.name })}>
                  {text('download')}
                </a>
                {signing.fingerprint !== null && (
                  <>
                    {' · '}
                    <a href={signedHeadOf(stream)} download aria-label={text('signed-head-of', { name: stream.name })}>
                      {text('signed-head')}
                    </a>
                  </>
                )}
              </>
            ),
          },
        ]}
      />
      <p className={styles.soft}>{text('head-detail')}</p>
      {signing.fingerprint !== null && (
        <>
          <KeyValues
            items={[
              {
                name: text('record-key'),
                value: (
                  <code dir="ltr" className={styles.long}>
                    {signing.fingerprint}
                  </code>
                ),
              },
            ]}
          />
          <p className={styles.soft}>
            {text('record-key-detail')}{' '}
            <a href={addresses.publicKey()} download>
              {text('public-key')}
            </a>
          </p>
        </>
      )}
    </section>
  );
}
