import type { GasketSpecification, JointPage, MakeAnswer } from '@seatwell/contract';
import { addresses } from '../../app/addresses.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { threadName } from '../../format/fractions.ts';
import { useText } from '../../texts/text-provider.tsx';
import { KeyValues } from '../../ui/key-values.tsx';
import { Link } from '../../ui/link.tsx';
import { jointState } from './shown-make.ts';

/** What the joint is: flange, gasket, bolts, lubricant, service, from where it is viewed, procedure. */
export function JointFacts({ page, make }: { page: JointPage; make: MakeAnswer }) {
  const text = useText('joint');
  const calc = useText('calculator');
  const trade = useTrade();
  const format = useFormat();
  const joint = jointState(page);
  const { flange, service, clampedParts, hotExposed } = joint.specification;
  const { bolting } = joint;
  const words = (...parts: (string | null | undefined | false)[]) =>
    parts.filter(Boolean).join(', ') || text('not-given');
  const procedure = make.procedure;
  const items = [
    {
      name: text('flange'),
      value: words(
        `${trade.word('standard', flange.standard)} ${trade.flange(flange.size, flange.rating)}`,
        trade.word('facing', flange.facing),
        joint.kind !== 'flange-pair' && trade.word('kind', joint.kind),
      ),
    },
    {
      name: text('stack'),
      value: words(
        clampedParts
          .map((part) =>
            [trade.word('part', part.kind), part.thickness_mm && format.quantity('length', part.thickness_mm)]
              .filter(Boolean)
              .join(' '),
          )
          .join(' · '),
      ),
    },
    { name: text('gasket'), value: words(gasketWords(make.gasket, trade, format, text), batchOf(page, make, text)) },
    {
      name: text('bolts'),
      value: bolting
        ? words(
            [
              format.count(bolting.count),
              threadName(bolting.thread),
              bolting.length_mm === null ? null : format.quantity('length', bolting.length_mm),
            ]
              .filter(Boolean)
              .join(' × '),
            [bolting.grade, bolting.nutGrade].filter(Boolean).join(' / '),
          )
        : text('not-given'),
    },
    {
      name: text('lubricant'),
      value: procedure?.lubricant
        ? words(
            make.target?.lubricant ?? procedure.lubricant.name,
            text('nut-factor', { factor: format.number(procedure.lubricant.nutFactor, 2) }),
            procedure.lubricant.source,
          )
        : words(make.target?.lubricant),
    },
    {
      name: text('service'),
      value: words(
        service.medium,
        service.pressure_MPa !== null && format.quantity('pressure', service.pressure_MPa),
        service.temperature_C !== null && format.quantity('temperature', service.temperature_C),
        hotExposed && text('hot-exposed'),
        typeof service.testPressure_MPa === 'number' &&
          `${calc('input-testPressure_MPa')} ${format.quantity('pressure', service.testPressure_MPa)}`,
        service.external &&
          `${calc('input-axialForce_N')} ${format.quantity('load', service.external.axialForce_N)}, ${calc('input-moment_Nm')} ${format.quantity('torque', service.external.moment_Nm)}`,
        service.temperatures && calc('thermal'),
      ),
    },
    {
      name: text('viewed'),
      value: words(
        joint.whereabouts.viewedFrom,
        joint.whereabouts.bolt1At && text('bolt-1-at', { at: joint.whereabouts.bolt1At }),
      ),
    },
    {
      name: text('procedure'),
      value: procedure ? (
        <>
          <Link href={addresses.procedure(procedure.procedureId, { revision: procedure.revision })}>
            {text('procedure-revision', { code: procedure.code, revision: procedure.revision })}
          </Link>
          {`, ${trade.word('pattern', procedure.content.pattern)}, ${text(`numbered-${procedure.content.numbering}`)}`}
        </>
      ) : (
        text('not-given')
      ),
    },
    {
      name: text('make'),
      value: words(
        trade.word('purpose', make.purpose),
        trade.word('scope', make.workScope),
        text('proof-by', { way: trade.word('proof', make.proof) }),
      ),
    },
    { name: text('checked-how'), value: trade.word('checking', make.checkingLevelNow) },
    {
      name: text('crew'),
      value: words(make.crew?.code, make.crewPersons.map((person) => person.name ?? text('name-erased')).join(', ')),
    },
    { name: text('drawing'), value: words(joint.whereabouts.drawing) },
  ];
  return <KeyValues items={items} />;
}

function gasketWords(
  gasket: GasketSpecification,
  trade: ReturnType<typeof useTrade>,
  format: ReturnType<typeof useFormat>,
  text: ReturnType<typeof useText<'joint'>>,
): string {
  const name = [trade.word('family', gasket.family), gasket.detail].filter(Boolean).join(', ');
  const many = gasket.count > 1 ? text('times', { count: format.count(gasket.count) }) : '';
  return `${many}${name}`;
}

function batchOf(page: JointPage, make: MakeAnswer, text: ReturnType<typeof useText<'joint'>>): string | undefined {
  const fitted = jointState(page).makes.find((each) => each.makeId === make.makeId)?.fitted;
  return fitted?.batch ? text('batch', { batch: fitted.batch }) : undefined;
}
