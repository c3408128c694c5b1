/**
 * Numbers whose change cannot be seen in a result, each with the reason: starts and bounds of iterations that end at
 * the same answer, sizes of memories. By file and by the line as it stands, so that a changed line comes back.
 * @type {readonly { file: string, code: string, why: string }[]}
 */
export const EQUIVALENT = [];
