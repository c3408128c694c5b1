import type { ProcedureContent } from '@seatwell/contract';
import {
  gasketOf,
  type JointState,
  type MakeState,
  type MissingDatum,
  type NotChecked,
  type UncheckedLimit,
} from '@seatwell/workflow';
import { knownThicknesses } from './target-joint.ts';
import type { GasketData } from './target-request.ts';

/** Limits that no window of this joint can hold, each with what the register, the procedure or the site's data lack. */
export function notChecked(
  joint: JointState,
  make: MakeState,
  { bolts }: ProcedureContent,
  gasketData: GasketData,
): readonly NotChecked[] {
  const { flange, service } = joint.specification;
  const gasket = gasketOf(joint, make);
  const list: NotChecked[] = [];
  const lacks = (limit: UncheckedLimit, missing: readonly (MissingDatum | false)[]) => {
    const named = missing.filter((each) => each !== false);
    if (named.length > 0) list.push({ limit, missing: named });
  };
  lacks('flange-strength', [!flange.strength && !flange.maximum && 'flange-strength-data']);
  lacks('flange-rotation', [
    !gasketData.rotationLimit_deg && 'gasket-rotation-limit',
    !flange.strength && !flange.maximum?.rotation_deg && 'flange-strength-data',
  ]);
  lacks('external-load', [!service.external && 'external-load']);
  lacks('thermal', [
    !service.temperatures && 'temperatures',
    !bolts?.material?.expansion_perK && 'bolt-material',
    knownThicknesses(joint, make) === null && 'clamped-thickness',
  ]);
  lacks('gasket-test', [typeof service.testPressure_MPa !== 'number' && 'test-pressure']);
  lacks('coating-temperature', [!bolts && 'coating']);
  lacks('nut-bearing', [!bolts && 'washers']);
  // Only a girth joint, of an exchanger, may have ribs: elsewhere nobody is asked for them.
  lacks('pass-partition-ribs', [joint.kind === 'girth' && typeof gasket.ribArea_mm2 !== 'number' && 'rib-area']);
  return list;
}
