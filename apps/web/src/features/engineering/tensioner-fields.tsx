import { useQuery } from '@tanstack/react-query';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { toolsQuery } from '../../app/reads.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import type { TargetDraft } from './target-draft.ts';

interface Props {
  readonly value: TargetDraft;
  readonly onChange: (value: TargetDraft) => void;
}

/** The tensioner that the pressures are calculated for, and the division of the gauge that they are set on. */
export function TensionerFields({ value, onChange }: Props) {
  const text = useText('engineering');
  const format = useFormat();
  const tools = useQuery(toolsQuery);
  const offered = (tools.data?.rows ?? []).filter(({ kind }) => kind === 'tensioner');
  const { gaugeDivision_MPa } = value;
  return (
    <>
      <ErrorNotice error={tools.error} />
      <Select
        label={text('tensioner')}
        value={value.tensionerId}
        onChange={(tensionerId) => onChange({ ...value, tensionerId })}
        options={offered.map((tool) => ({
          value: tool.toolId,
          label: tool.tag,
          detail:
            tool.hydraulicArea_mm2 === null
              ? text('tensioner-without-area')
              : text('tensioner-detail', {
                  area: format.number(tool.hydraulicArea_mm2, 0),
                  pressure: format.quantity('pressure', tool.scaleMaximum),
                }),
        }))}
      />
      {tools.data && offered.length === 0 && <p>{text('no-tensioner')}</p>}
      <NumberField
        label={text('gauge-division')}
        unit={format.unit('pressure')}
        hint={text('gauge-division-hint')}
        least={0}
        value={gaugeDivision_MPa === undefined ? undefined : format.toShown('pressure', gaugeDivision_MPa)}
        onChange={(shown) =>
          onChange({
            ...value,
            gaugeDivision_MPa: shown === undefined || shown <= 0 ? undefined : format.toHeld('pressure', shown),
          })
        }
      />
    </>
  );
}
