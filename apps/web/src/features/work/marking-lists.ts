const npsSizes = [0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24];
const npsLarge = [26, 28, 30, 32, 34, 36, 38, 40, 42, 44, 46, 48, 50, 52, 54, 56, 58, 60];
const dnSizes = [10, 15, 20, 25, 32, 40, 50, 65, 80, 100, 125, 150, 200, 250, 300, 350, 400, 450, 500, 600];
const dnLarge = [700, 800, 900, 1000, 1200, 1400, 1600, 1800, 2000];

/** Nominal sizes that a marking can show, in the keys of the register; the joint's own is always among them. */
export function nominalSizes(ofJoint: string): readonly string[] {
  const nps = [...npsSizes, ...npsLarge].map((size) => `NPS${size}`);
  const dn = [...dnSizes, ...dnLarge].map((size) => `DN${size}`);
  const list = ofJoint.startsWith('DN') ? dn : nps;
  return ofJoint === '' || list.includes(ofJoint) ? list : [ofJoint, ...list];
}

/** Classes or PN ratings that a marking can show. */
export function classes(ofJoint: string): readonly string[] {
  const list = ofJoint.startsWith('PN')
    ? ['PN2.5', 'PN6', 'PN10', 'PN16', 'PN25', 'PN40', 'PN63', 'PN100', 'PN160', 'PN250', 'PN320', 'PN400']
    : ['75', '150', '300', '400', '600', '900', '1500', '2500'];
  return ofJoint === '' || list.includes(ofJoint) ? list : [ofJoint, ...list];
}
