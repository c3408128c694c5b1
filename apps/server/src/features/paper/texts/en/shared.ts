/** What every paper says. */
export const shared = {
  product: 'Seatwell',
  page: 'page {page} of {pages}',
  none: '–',
  printedAt: 'printed {printed}',
  notEntered: 'not entered',
  someone: 'name not held',
  noReason: 'no reason given',
  safety: {
    title: 'Cautions',
    site: 'Of the procedure',
    lines: [
      'Never loosen or tighten a pressurised joint outside a procedure made for it.',
      'Prove isolation and zero energy twice before the first bolt.',
      'Crack the far side first and keep two opposite bolts until it is dead.',
      'Expect residual product and pyrophoric scale.',
      'Stay out of the line of fire of bolts, tensioners and hydraulic hoses.',
      'Mind pinch points and fluid injection.',
      'Keep clear of gas tests.',
    ],
    defers:
      'Values support, and do not replace, the responsible engineer, the site’s procedures and local codes. Where they differ, they govern.',
  },
  stop: {
    heading: 'STOP AND CALL',
    text: 'Gasket, bolts or flange not as printed, damage, a gap that does not close evenly, a nut that turns without load, a tool that clicks early, a number you are not sure of: stop, make safe, call {who}.',
    who: 'the chargehand and the joint engineer',
    phone: 'Telephone',
  },
};
