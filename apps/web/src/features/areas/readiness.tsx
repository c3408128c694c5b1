import type { AreaProgress } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import styles from './areas.module.css';
import { lapsingByPerson, missingByPerson } from './people-by-person.ts';

/** Whether the people who work there may: in date, lapsing, missing for the methods planned. */
export function Readiness({ people }: { people: AreaProgress['people'] }) {
  const text = useText('areas');
  const trade = useTrade();
  const format = useFormat();
  const name = (person: { name: string | null }) => person.name ?? text('name-erased');
  if (people.persons === 0) return <p className={styles.soft}>{text('nobody-assigned')}</p>;
  return (
    <div className={styles.readiness}>
      <p>
        <strong>
          {text('in-date', {
            count: people.persons,
            shown: format.count(people.inDate),
            persons: format.count(people.persons),
          })}
        </strong>
      </p>
      {people.lapsing.length > 0 && (
        <ul className={styles.people}>
          {lapsingByPerson(people.lapsing).map((each) => (
            <li key={`${each.person.personId} ${each.validThrough}`}>
              <span>
                <Link href={addresses.person(each.person.personId)}>{name(each.person)}</Link>{' '}
                <span className={styles.attention}>
                  {text('lapses', { day: format.calendarDay(each.validThrough) })}
                </span>
              </span>
              <span className={styles.soft}>
                {each.qualifiedFor.map((what) => trade.word('qualified', what)).join(', ')}
              </span>
            </li>
          ))}
        </ul>
      )}
      {people.missing.length > 0 && (
        <ul className={styles.people}>
          {missingByPerson(people.missing).map(({ person, methods }) => (
            <li key={person.personId}>
              <Link href={addresses.person(person.personId)}>{name(person)}</Link>
              {methods.map((each) => (
                <span key={`${each.method} ${each.crew.crewId}`}>
                  <span className={styles.attention}>
                    {text('missing', { method: trade.word('method', each.method) })}
                  </span>{' '}
                  {text('missing-planned', {
                    count: each.plannedJoints,
                    shown: format.count(each.plannedJoints),
                    crew: each.crew.code,
                  })}
                </span>
              ))}
            </li>
          ))}
        </ul>
      )}
      {people.lapsing.length === 0 && people.missing.length === 0 && (
        <p className={styles.soft}>{text('all-in-date')}</p>
      )}
    </div>
  );
}
