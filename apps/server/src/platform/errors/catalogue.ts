/**
 * Every error that the API answers with: status and the text a person reads. The code is the stable end of
 * the problem's `type`. A code without a status and a title does not compile.
 */
export const ERROR_CODES = [
  'bad-input',
  'not-signed-in',
  'wrong-sign-in',
  'wrong-secret',
  'locked-out',
  'not-allowed',
  'origin-refused',
  'not-found',
  'stale-decision',
  'event-id-reused',
  'already-exists',
  'already-set-up',
  'signature-missing',
  'rules-not-met',
  'calculation-refused',
  'file-refused',
  'too-large',
  'media-type-refused',
  'too-many-requests',
  'busy',
  'head-unsigned',
  'internal',
] as const;

export type ErrorCode = (typeof ERROR_CODES)[number];

export const ERROR_CATALOGUE = {
  'bad-input': {
    status: 400,
    title: 'Something in the request cannot be read',
  },
  'not-signed-in': { status: 401, title: 'Sign in first' },
  'wrong-sign-in': {
    status: 401,
    title: 'The e-mail address or the secret is wrong',
  },
  'wrong-secret': {
    status: 422,
    title: 'The signature was not accepted: the secret is wrong',
  },
  'locked-out': {
    status: 423,
    title: 'This account is locked for a while after too many wrong secrets',
  },
  'not-allowed': { status: 403, title: 'Your roles do not allow this' },
  'origin-refused': {
    status: 403,
    title: 'The request came from another site',
  },
  'not-found': { status: 404, title: 'There is nothing here by that name' },
  'stale-decision': {
    status: 409,
    title: 'The joint has changed since you looked at it',
  },
  'event-id-reused': {
    status: 409,
    title: 'This event id was used for something else',
  },
  'already-exists': { status: 409, title: 'This exists already' },
  'already-set-up': { status: 409, title: 'The site is set up already' },
  'signature-missing': { status: 422, title: 'This needs your signature' },
  'rules-not-met': { status: 422, title: 'Rules stop this' },
  'calculation-refused': { status: 422, title: 'This cannot be calculated' },
  'file-refused': { status: 422, title: 'The file cannot be used' },
  'too-large': { status: 413, title: 'This is too large' },
  'media-type-refused': {
    status: 415,
    title: 'This kind of file is not accepted',
  },
  'too-many-requests': { status: 429, title: 'Too many tries' },
  'head-unsigned': { status: 503, title: 'Heads of the record are not signed here' },
  busy: { status: 503, title: 'The server is busy' },
  internal: { status: 500, title: 'Something went wrong on our side' },
} as const satisfies Record<ErrorCode, { status: number; title: string }>;
