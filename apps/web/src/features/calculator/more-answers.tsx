import type { TargetAnswer } from '@seatwell/calc';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Table } from '../../ui/table.tsx';
import { isRefused, sensitivitiesOf } from './answer.ts';
import type { Inputs } from './inputs.ts';
import { Refused } from './refused.tsx';

/** Stresses, rigidity and rotation of one flange at the target. */
export function FlangeStresses({ states }: { states: NonNullable<TargetAnswer['flangeStress']> }) {
  const text = useText('calculator');
  const format = useFormat();
  const stress = (value: number) => format.value('stress', value);
  return (
    <Table
      caption={text('flange-stresses', { unit: format.unit('stress') })}
      rows={states}
      rowKey={(state) => state.case}
      onPhone="cards"
      columns={[
        { key: 'case', header: text('case'), rowHeader: true, cell: (state) => text(`case-${state.case}`) },
        { key: 'SH', header: text('hub-stress'), numeric: true, cell: (state) => stress(state.longitudinalHub_MPa) },
        { key: 'SR', header: text('radial-stress'), numeric: true, cell: (state) => stress(state.radial_MPa) },
        { key: 'ST', header: text('tangential-stress'), numeric: true, cell: (state) => stress(state.tangential_MPa) },
        { key: 'J', header: text('rigidity'), numeric: true, cell: (state) => format.number(state.rigidityJ, 2) },
        {
          key: 'rotation',
          header: text('rotation-of-flange'),
          numeric: true,
          cell: (state) => format.number(state.rotation_deg, 3),
        },
        { key: 'ok', header: text('allowed'), cell: (state) => text(state.ok ? 'within' : 'beyond') },
      ]}
    />
  );
}

/** What 10 % more of each input does to window, target and torque. */
export function Sensitivities({ inputs }: { inputs: Inputs }) {
  const text = useText('calculator');
  const format = useFormat();
  const found = sensitivitiesOf(inputs);
  if (isRefused(found)) return <Refused title={text('refused-target')} items={found.refused} />;
  const percent = (value: number | undefined) => (value === undefined ? '' : format.number(value, 1));
  return (
    <Table
      caption={text('sensitivities')}
      rows={found}
      rowKey={(row) => row.input}
      onPhone="cards"
      columns={[
        { key: 'input', header: text('ten-more-of'), rowHeader: true, cell: (row) => text(`more-${row.input}`) },
        { key: 'floor', header: text('floor-change'), numeric: true, cell: (row) => percent(row.floor_percent) },
        { key: 'ceiling', header: text('ceiling-change'), numeric: true, cell: (row) => percent(row.ceiling_percent) },
        { key: 'target', header: text('target-change'), numeric: true, cell: (row) => percent(row.target_percent) },
        { key: 'torque', header: text('torque-change'), numeric: true, cell: (row) => percent(row.torque_percent) },
        { key: 'open', header: text('window'), cell: (row) => text(row.open ? 'stays-open' : 'closes') },
      ]}
    />
  );
}
