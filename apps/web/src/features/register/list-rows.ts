import type { SelectedJoint } from './selection.ts';

/** Rows of a list command: the joints that have a make to work on, each with the version seen. */
export function listRows<Payload>(joints: readonly SelectedJoint[], payload: Payload) {
  return listRowsWith(joints, () => payload);
}

/** The same, with a payload of its own for each joint. */
export function listRowsWith<Payload>(joints: readonly SelectedJoint[], payloadOf: (joint: SelectedJoint) => Payload) {
  return joints.flatMap((joint) => {
    const { jointId, makeId, version } = joint;
    return makeId === null ? [] : [{ jointId, makeId, versionSeen: version, payload: payloadOf(joint) }];
  });
}

/** How many of the ticked joints have no make to work on. */
export function withoutMake(joints: readonly SelectedJoint[]): number {
  return joints.filter(({ makeId }) => makeId === null).length;
}
