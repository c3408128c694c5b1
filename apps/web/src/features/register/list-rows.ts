import type { SelectedJoint } from './selection.ts';

/** Rows of a list command: the joints that have a make to work on, each with the version seen. */
export function listRows<Payload>(joints: readonly SelectedJoint[], payload: Payload) {
  return joints.flatMap(({ jointId, makeId, version }) =>
    makeId === null ? [] : [{ jointId, makeId, versionSeen: version, payload }],
  );
}

/** How many of the ticked joints have no make to work on. */
export function withoutMake(joints: readonly SelectedJoint[]): number {
  return joints.filter(({ makeId }) => makeId === null).length;
}
