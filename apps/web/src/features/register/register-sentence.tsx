import { type ChoicesAnswer, CRITICALITIES, REGISTER_SORTS, type RegisterSort, STAGES } from '@seatwell/contract';
import { dayInZone } from '../../app/day-in-zone.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Sentence, SentenceChoice } from '../../ui/sentence.tsx';
import { FLAGS_OFFERED } from './flags-offered.ts';
import { type RegisterSearch, withFilter } from './register-search.ts';

interface Props {
  readonly search: RegisterSearch;
  readonly onChange: (search: RegisterSearch) => void;
  readonly choices: ChoicesAnswer;
  readonly timeZone: string;
}

const daysAhead = [0, 1, 3, 7, 14];
const any = '';

/** What the list holds, as a sentence that can be edited. */
export function RegisterSentence({ search, onChange, choices, timeZone }: Props) {
  const text = useText('register');
  const trade = useTrade();
  const format = useFormat();
  const set = (name: Parameters<typeof withFilter>[1]) => (value: readonly string[]) =>
    onChange(withFilter(search, name, value));
  const named = (
    value: readonly string[] | undefined,
    nameOf: (each: string) => string,
    anyKey: Parameters<typeof text>[0],
  ) => {
    if (!value || value.length === 0) return text(anyKey);
    if (value.length > 3)
      return text('several', { first: nameOf(value[0] ?? ''), more: format.count(value.length - 1) });
    return value.map(nameOf).join(` ${text('or')} `);
  };
  const areaName = (areaId: string) => choices.areas.find((area) => area.areaId === areaId)?.name ?? areaId;
  const systemCode = (systemId: string) => choices.systems.find((each) => each.systemId === systemId)?.code ?? systemId;
  const crewCode = (crewId: string) => choices.crews.find((crew) => crew.crewId === crewId)?.code ?? crewId;
  const packNumber = (packId: string) => choices.packs.find((pack) => pack.packId === packId)?.number ?? packId;
  const days = daysAhead.map((ahead) => ({
    value: dayInZone(timeZone, ahead),
    label: ahead < 2 ? text(ahead === 0 ? 'up-to-today' : 'up-to-tomorrow') : text('up-to-days', { count: ahead }),
  }));
  const shownDay = days.find((day) => day.value === search.plannedUpTo)?.label;
  const { stageFrom, stageTo } = search;
  const stageRange =
    stageFrom || stageTo
      ? [stageFrom, stageTo].map((each) => (each ? trade.word('stage', each) : '')).join(` ${text('to')} `)
      : undefined;

  return (
    <Sentence label={text('filter')}>
      {text('joints-in')}{' '}
      <SentenceChoice
        label={text('area')}
        multiple
        shown={named(search.area, areaName, 'any-area')}
        options={choices.areas.map((area) => ({ value: area.areaId, label: area.name, detail: area.code }))}
        value={search.area ?? []}
        onChange={set('area')}
      />
      {', '}
      <SentenceChoice
        label={text('system')}
        multiple
        shown={named(search.system, systemCode, 'any-system')}
        options={choices.systems.map((each) => ({ value: each.systemId, label: each.code, detail: each.name }))}
        value={search.system ?? []}
        onChange={set('system')}
      />
      {', '}
      <SentenceChoice
        label={text('pack')}
        shown={search.pack ? packNumber(search.pack) : text('any-pack')}
        options={[
          { value: any, label: text('any-pack') },
          ...choices.packs.map((pack) => ({ value: pack.packId, label: pack.number })),
        ]}
        value={[search.pack ?? any]}
        onChange={([packId]) => onChange(withFilter(search, 'pack', packId))}
      />{' '}
      {text('at-stage')}{' '}
      <SentenceChoice
        label={text('stage')}
        multiple
        shown={stageRange ?? named(search.stage, (stage) => trade.word('stage', stage), 'any-stage')}
        options={STAGES.map((stage) => ({ value: stage, label: trade.word('stage', stage) }))}
        value={search.stage ?? []}
        onChange={(value) => {
          const { stageFrom: _from, stageTo: _to, ...rest } = search;
          onChange(withFilter(rest, 'stage', value));
        }}
      />
      {text('planned')}{' '}
      <SentenceChoice
        label={text('planned-label')}
        shown={
          shownDay ??
          (search.plannedUpTo ? text('up-to-day', { day: format.calendarDay(search.plannedUpTo) }) : text('any-day'))
        }
        options={[{ value: any, label: text('any-day') }, ...days]}
        value={[search.plannedUpTo ?? any]}
        onChange={([day]) => onChange(withFilter(search, 'plannedUpTo', day))}
      />
      {text('of-crew')}{' '}
      <SentenceChoice
        label={text('crew')}
        multiple
        shown={named(search.crew, crewCode, 'any-crew')}
        options={choices.crews.map((crew) => ({ value: crew.crewId, label: crew.code, detail: crew.company }))}
        value={search.crew ?? []}
        onChange={set('crew')}
      />
      {', '}
      <SentenceChoice
        label={text('criticality')}
        multiple
        shown={named(search.criticality, (each) => text('criticality-of', { letter: each }), 'any-criticality')}
        options={CRITICALITIES.map((each) => ({ value: each, label: text('criticality-of', { letter: each }) }))}
        value={search.criticality ?? []}
        onChange={set('criticality')}
      />
      {', '}
      <SentenceChoice
        label={text('flag')}
        multiple
        shown={named(search.flag, (flag) => trade.word('flag', flag), 'any-flag')}
        options={FLAGS_OFFERED.map((flag) => ({ value: flag, label: trade.word('flag', flag) }))}
        value={search.flag ?? []}
        onChange={set('flag')}
      />
      {text('ordered-by')}{' '}
      <SentenceChoice
        label={text('order')}
        shown={text(`sort-${search.sort ?? 'tag'}`)}
        options={REGISTER_SORTS.map((sort) => ({ value: sort, label: text(`sort-${sort}`) }))}
        value={[search.sort ?? 'tag']}
        onChange={([sort]) => onChange({ ...search, sort: sort as RegisterSort })}
      />
    </Sentence>
  );
}
