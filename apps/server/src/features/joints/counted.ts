import type { JointState } from '@seatwell/workflow';
import type { RollupDelta } from '../recording/decision.ts';
import type { Place } from './projected-rows.ts';
import { shownMake } from './shown-make.ts';

/** Where a joint is counted: once in its shutdown, area and system, and in each pack of the make that it shows. */
export function counted({ shutdownId }: Place, joint: JointState): RollupDelta[] {
  if (joint.voided) return [];
  const make = shownMake(joint);
  const stage = make?.stage ?? 'planned';
  const { areaId, systemId } = joint.whereabouts;
  const one = { stage, count: 1 };
  return [
    { dimension: 'shutdown', key: shutdownId, ...one },
    ...(areaId ? [{ dimension: 'area' as const, key: areaId, ...one }] : []),
    ...(systemId ? [{ dimension: 'system' as const, key: systemId, ...one }] : []),
    ...(make?.packs ?? []).map((pack) => ({ dimension: 'pack' as const, key: pack.packId, ...one })),
  ];
}
