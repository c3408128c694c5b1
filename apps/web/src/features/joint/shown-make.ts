import type { JointPage, MakeAnswer } from '@seatwell/contract';
import type { JointState, MakeState } from '@seatwell/workflow';

/** The make that the address names, or the one to look at now. */
export function shownMake(page: JointPage, asked: string | undefined): MakeAnswer | undefined {
  const byId = (makeId: string | null | undefined) => page.makes.find((make) => make.makeId === makeId);
  return byId(asked) ?? byId(page.shownMakeId) ?? page.makes[0];
}

/** The joint as the fold has it. */
export const jointState = (page: JointPage): JointState => page.joint as unknown as JointState;

/** Whether anything is still planned or worked: on a joint without work its record is only looked at. */
export const isWorkable = (page: JointPage, make: MakeAnswer | undefined): boolean =>
  jointState(page).voided === null && make?.cancelled !== true;

/** The make as the fold has it. */
export const stateOf = (page: JointPage, make: MakeAnswer): MakeState | undefined =>
  jointState(page).makes.find((each) => each.makeId === make.makeId);
