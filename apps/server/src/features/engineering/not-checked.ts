import type { ProcedureContent } from '@seatwell/contract';
import type { MissingDatum, NotChecked, UncheckedLimit } from '@seatwell/workflow';

/** Limits that no window of this joint can hold, each with what the register, the procedure or the site's data lack. */
export function notChecked(procedure: ProcedureContent): readonly NotChecked[] {
  const list: NotChecked[] = [];
  const lacks = (limit: UncheckedLimit, missing: readonly (MissingDatum | false)[]) => {
    const named = missing.filter((each) => each !== false);
    if (named.length > 0) list.push({ limit, missing: named });
  };
  lacks('coating-temperature', [!procedure.bolts && 'coating']);
  lacks('nut-bearing', [!procedure.bolts && 'washers']);
  return list;
}
