/** Tags that hang at the joint, and labels. */
export const tags = {
  title: 'Joint tags',
  studs: '{count} × {thread}',
  seenFrom: 'Seen from {side}',
  bolt1: 'Bolt 1: {place}',
  notFinal: 'NOT THE FINAL MAKE: {purpose}',
  stop: 'Do not loosen or tighten by this tag: scan it for the joint as it stands now.',
  stub: 'Each stub is torn off when its step is done and goes to the chargehand',
  stubName: 'Name',
  stubTime: 'Date, time',
  steps: {
    open: 'OPENED',
    'faces-accepted': 'FACES ACCEPTED',
    'nipped-up': 'NIPPED UP',
    tight: 'TIGHT',
    checked: 'CHECKED',
  },
};
