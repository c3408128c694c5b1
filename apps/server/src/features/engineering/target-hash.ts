import { gasketOf, type JointState, type MakeState, type ProcedureFacts } from '@seatwell/workflow';
import { contentHash } from '../../platform/record/canonical.ts';

/**
 * Hash of every input that the calculation uses: when it differs, the target is out of date. What an older release did
 * not know of is left out where it is not given, so that its targets keep their hash.
 */
export function targetInputsHash(
  joint: JointState,
  make: MakeState,
  procedure: ProcedureFacts | null,
  dataHashes: readonly (string | null)[],
): string {
  const { flange, service } = joint.specification;
  const gasket = gasketOf(joint, make);
  const content = procedure?.content;
  const stacked = content?.method === 'tensioner' || content?.method === 'elongation' || Boolean(service.temperatures);
  return contentHash({
    flange,
    bolting: joint.bolting,
    gasket,
    service,
    method: content?.method ?? null,
    policy: content?.policy ?? null,
    passPercents: content?.passPercents ?? null,
    ...(content?.method === 'tensioner' ? { coverage: content.coverage ?? null } : {}),
    ...(stacked ? { clampedParts: make.clampedParts ?? joint.specification.clampedParts } : {}),
    ...(content?.bolts ? { bolts: content.bolts } : {}),
    data: dataHashes,
  }).toString('hex');
}
