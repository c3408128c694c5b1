import { currentMake, type JointState, type MakeState, makeToWorkOn } from '@seatwell/workflow';

/** The make that the register shows: the one to work on, or the last there was. */
export const shownMake = (joint: JointState): MakeState | null => makeToWorkOn(joint) ?? currentMake(joint);
