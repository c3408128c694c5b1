import type { AreaProgress } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { addresses } from '../../app/addresses.ts';
import { areasQuery } from '../../app/reads.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import styles from './areas.module.css';
import { Readiness } from './readiness.tsx';
import { SignOffTable } from './sign-off-table.tsx';
import { StageShare } from './stage-share.tsx';

/** The three questions of each area, side by side. */
export function AreaRows({ shutdownId }: { shutdownId: string }) {
  const { data } = useSuspenseQuery(areasQuery(shutdownId));
  return (
    <div className={styles.areas}>
      {data.rows.map((row) => (
        <AreaRow key={row.area?.areaId ?? 'none'} shutdownId={shutdownId} row={row} />
      ))}
    </div>
  );
}

function AreaRow({ shutdownId, row }: { shutdownId: string; row: AreaProgress }) {
  const text = useText('areas');
  const format = useFormat();
  const name = row.area?.name ?? text('no-area');
  const joints = (query: Record<string, string>) =>
    addresses.register(shutdownId, { ...(row.area === null ? {} : { area: row.area.areaId }), ...query });
  return (
    <section className={styles.area}>
      <h2 className={styles.name}>
        <Link href={joints({})}>{name}</Link>
        <span className={styles.soft}>
          {[row.area?.code, text('joints', { count: row.total, shown: format.count(row.total) })]
            .filter(Boolean)
            .join(' · ')}
        </span>
      </h2>
      <div>
        <h3>{text('progress')}</h3>
        <StageShare total={row.total} counts={row.stages} planned={row.planned} hrefOf={(stage) => joints({ stage })} />
      </div>
      <div>
        <h3>{text('sign-offs')}</h3>
        <SignOffTable
          caption={text('sign-offs-of', { name })}
          rows={row.signOffs}
          hrefOf={(waitsFor) => joints({ waitsFor })}
        />
      </div>
      <div>
        <h3>{text('qualifications')}</h3>
        <Readiness people={row.people} />
      </div>
    </section>
  );
}
