import type { PackPage as PackAnswer } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { addresses } from '../../app/addresses.ts';
import { packQuery } from '../../app/reads.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { StageShare } from '../areas/stage-share.tsx';
import { PunchTable } from '../punch/punch-table.tsx';
import { useStopperWords } from '../today/use-stopper-words.ts';
import { Late } from './late.tsx';
import { PackActions } from './pack-actions.tsx';
import { PackMembers } from './pack-members.tsx';
import { PackReadings } from './pack-readings.tsx';
import styles from './packs.module.css';

/** A test pack: what stops it, its release, its readings, its joints with their results. */
export function PackPage() {
  const text = useText('packs');
  const trade = useTrade();
  const shutdownId = useShutdownId();
  const { packId = '' } = useParams({ strict: false });
  const { data: pack } = useSuspenseQuery(packQuery(shutdownId, packId));
  return (
    <>
      <PageHeader
        over={<Link href={addresses.packs(shutdownId)}>{text('packs')}</Link>}
        title={text('pack-title', { number: pack.number, state: trade.word('packstate', pack.state) })}
        documentTitle={pack.number}
        sub={[pack.area?.name, pack.system && `${pack.system.code} ${pack.system.name}`].filter(Boolean).join(' · ')}
        actions={<PackActions pack={pack} />}
      />
      <div className={styles.two}>
        <div className={styles.column}>
          <Stoppers pack={pack} />
          <PackReadings pack={pack} />
        </div>
        <div className={styles.column}>
          <PackFacts pack={pack} />
          <section className={styles.section}>
            <h2>{text('progress')}</h2>
            <StageShare
              total={pack.total}
              counts={pack.stages}
              hrefOf={(stage) => addresses.register(shutdownId, { pack: pack.packId, stage })}
            />
          </section>
        </div>
      </div>
      <PackMembers shutdownId={shutdownId} pack={pack} />
      <PunchTable
        shutdownId={shutdownId}
        caption={text('punch-items')}
        rows={pack.punchItems}
        empty={text('no-punch')}
      />
    </>
  );
}

function Stoppers({ pack }: { pack: PackAnswer }) {
  const text = useText('packs');
  const words = useStopperWords();
  return (
    <section className={styles.section}>
      <h2>{text('stops')}</h2>
      {pack.stoppers.length === 0 && <p>{text(pack.state === 'proven' ? 'nothing-left' : 'nothing-stops')}</p>}
      <ol className={styles.stoppers}>
        {pack.stoppers.map((stopper) => (
          <li key={stopper.code}>
            <span>{words.stopper(stopper)}</span>
            <span className={styles.soft}>{words.who(stopper.who)}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

function PackFacts({ pack }: { pack: PackAnswer }) {
  const text = useText('packs');
  const trade = useTrade();
  const format = useFormat();
  const { released } = pack;
  return (
    <section className={styles.section}>
      <h2>{text('test')}</h2>
      <KeyValues
        items={[
          { name: text('way'), value: trade.word('proof', pack.way) },
          { name: text('medium'), value: pack.medium },
          { name: text('pressure'), value: format.quantity('pressure', pack.pressure_MPa) },
          { name: text('hold'), value: format.duration(pack.hold_min) },
          {
            name: text('planned'),
            value:
              pack.plannedOn === null ? (
                text('no-day')
              ) : (
                <>
                  {format.calendarDay(pack.plannedOn)}
                  <Late plannedOn={pack.plannedOn} proven={pack.state === 'proven'} />
                </>
              ),
          },
          {
            name: text('released'),
            value:
              released === null
                ? text('not-released')
                : text('released-by', {
                    name: released.by?.name ?? text('name-erased'),
                    at: format.dayTime(released.at),
                  }),
          },
          ...(released === null
            ? []
            : [
                { name: text('metal'), value: format.quantity('temperature', released.metalTemperature_C) },
                {
                  name: text('gauges'),
                  value: released.gaugeIds.map((id) => released.gaugeTags[id] ?? id).join(', '),
                },
              ]),
        ]}
      />
    </section>
  );
}
