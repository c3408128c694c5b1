import type { ImportAnswer, ImportPreview } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Figure, FigureRow } from '../../ui/figure.tsx';
import { Link } from '../../ui/link.tsx';
import { Notice } from '../../ui/notice.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import styles from './import.module.css';

/** What the import recorded, and where to go on. */
export function ImportResult({ preview, answer }: { preview: ImportPreview; answer: ImportAnswer }) {
  const text = useText('import');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const register = addresses.register(shutdownId);
  const { areas, systems, crews, packs } = answer.created;
  return (
    <div className={styles.page}>
      <PageHeader
        title={text('result-title', { file: preview.fileName })}
        over={<Link href={register}>{text('register')}</Link>}
        sub={text('result-sub', { at: format.dayTime(answer.recordedAt) })}
      />
      <FigureRow>
        <Figure
          value={format.count(answer.listed)}
          label={text('result-listed', { count: answer.listed })}
          href={register}
        />
        <Figure
          value={format.count(answer.specified)}
          label={text('result-specified', { count: answer.specified })}
          href={register}
        />
        <Figure
          value={format.count(answer.assigned)}
          label={text('result-assigned', { count: answer.assigned })}
          href={register}
        />
        <Figure
          value={format.count(areas)}
          label={text('result-areas', { count: areas })}
          href={addresses.areas(shutdownId)}
        />
        <Figure
          value={format.count(systems)}
          label={text('result-systems', { count: systems })}
          href={addresses.setup(shutdownId)}
        />
        <Figure
          value={format.count(crews)}
          label={text('result-crews', { count: crews })}
          href={addresses.setup(shutdownId)}
        />
        <Figure
          value={format.count(packs)}
          label={text('result-packs', { count: packs })}
          href={addresses.packs(shutdownId)}
        />
      </FigureRow>
      {answer.leftOut > 0 && (
        <Notice kind="attention" title={text('left-out', { count: answer.leftOut })}>
          <p>{text('left-out-detail')}</p>
        </Notice>
      )}
      <p className={styles.links}>
        <Link href={register}>{text('to-register')}</Link>
        <Link href={addresses.importRegister(shutdownId)}>{text('import-more')}</Link>
      </p>
    </div>
  );
}
