import type { PackPage } from '@seatwell/contract';

export type PackMember = PackPage['members'][number];

const CLOSED: readonly PackMember['stage'][] = ['tight', 'checked', 'proven', 'handed-over'];

/** Joints that see the pressure of the pack. */
export const underPressure = (pack: Pick<PackPage, 'members'>): readonly PackMember[] =>
  pack.members.filter((member) => member.role !== 'reinstated' && !member.cancelled);

/** Whether a joint can hold pressure: tight or beyond, or not worked on and only tested. */
export const isClosed = (member: PackMember): boolean =>
  CLOSED.includes(member.stage) || (member.stage === 'planned' && member.waitsFor.code === 'proof');
