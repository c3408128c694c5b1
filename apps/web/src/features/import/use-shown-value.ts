import { GASKET_FAMILIES_KNOWN, JOINT_KINDS, WORK_SCOPES } from '@seatwell/contract';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';

const oneOf = <T extends string>(values: readonly T[], value: string): T | undefined =>
  values.find((each) => each === value);

/** Values of the register's fields in trade words and the person's way of writing days. */
export function useShownValue(): (field: string, value: string | number | null | undefined) => string {
  const text = useText('import');
  const trade = useText('trade');
  const format = useFormat();
  return (field, value) => {
    if (value === null || value === undefined || value === '') return text('nothing');
    const written = String(value);
    const kind = field === 'kind' ? oneOf(JOINT_KINDS, written) : undefined;
    const family = field === 'gasketFamily' ? oneOf(GASKET_FAMILIES_KNOWN, written) : undefined;
    const scope = field === 'workScope' ? oneOf(WORK_SCOPES, written) : undefined;
    if (kind) return trade(`kind-${kind}`);
    if (family) return trade(`family-${family}`);
    if (scope) return trade(`scope-${scope}`);
    if (field === 'plannedDate' && /^\d{4}-\d\d-\d\d$/.test(written)) return format.calendarDay(written);
    return written;
  };
}
