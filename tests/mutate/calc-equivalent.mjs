/**
 * Numbers whose change cannot be seen in a result, each with the reason: starts and bounds of iterations that end at
 * the same answer, sizes of memories, digits of a text. By file and by the line as it stands, so that a changed line
 * comes back; `numbers` names those of the line that are meant, all of them where it is missing.
 * @type {readonly { file: string, code: string, numbers?: string[], why: string }[]}
 */
export const EQUIVALENT = [
  {
    file: 'tensioner/group-pressures.ts',
    code: 'const CORRECTIONS = 8;',
    why: 'count of corrections, whole; the loads have settled before',
  },
  {
    file: 'tensioner/group-pressures.ts',
    code: 'let percents = groups.map(() => 100);',
    why: 'start of an iteration that ends at the same loads',
  },
  {
    file: 'tensioner/group-pressures.ts',
    code: 'const steps = groups.map((bolts, group) => ({ bolts, load_percent: percents[group] ?? 100 }));',
    why: 'for the type only: every group has its percent',
  },
  {
    file: 'target/flange-at-target.ts',
    code: 'export const REFERENCE_MPA = 100;',
    why: 'stress at which the flange is computed: everything is linear from there, so it cancels',
  },
  {
    file: 'bolting/bolting-grade.ts',
    code: 'const LOW_STRENGTH_MPA = 30 * 6.894757;',
    why: 'the border itself: no grade of the table yields between 206.8 and 208.9 MPa',
  },
  {
    file: 'bolting/strength-rows.ts',
    code: "const upTo_mm = numberIn(cells, 'upTo_mm') ?? (upToIn === undefined ? Infinity : upToIn * 25.4);",
    why: 'no row of the table has inches alone',
  },
  {
    file: 'bolting/strength-rows.ts',
    code: "over_in: numberIn(cells, 'over_in') ?? over_mm / 25.4,",
    why: 'metric steps in inches: no inch thread lies within 1 % of 16 mm',
  },
  {
    file: 'bolting/strength-rows.ts',
    code: 'upTo_in: upToIn ?? upTo_mm / 25.4,',
    why: 'metric steps in inches: no inch thread lies within 1 % of 16 or 39 mm',
  },
  {
    file: 'flanges/find-flange.ts',
    code: 'if (row.sourcesAgreeing <= 1) {',
    why: 'a whole number of sources',
  },
  {
    file: 'sequence/cross-order.ts',
    code: 'return [0, 1, 2, 3].map((quarter) => Math.floor((quarter * count) / 4 + 0.5));',
    numbers: ['0.5'],
    why: 'rounds quarters: none lies between 0.495 and 0.5',
  },
  {
    file: 'sequence/cross-order.ts',
    code: 'const starts = Array.from({ length: tools + 1 }, (_, tool) => Math.ceil((tool * count) / tools));',
    why: 'length of a list, whole',
  },
  { file: 'sequence/cautions.ts', code: 'if (group > 1) {', why: 'a whole number of bolts' },
  { file: 'sequence/cautions.ts', code: 'if (tools > 1) {', why: 'a whole number of tools' },
  { file: 'sequence/request.ts', code: 'if (tools > 1) {', why: 'a whole number of tools' },
  {
    file: 'stud-length/standard-stud-length.ts',
    code: 'const faces_in = Number(flange.rating) <= 300 ? FACES_LOW_CLASS : FACES_HIGH_CLASS;',
    why: 'between classes: the next is 400',
  },
  {
    file: 'sequence/request.ts',
    code: 'if (input.group !== undefined && input.group > 1) {',
    why: 'a whole number of bolts',
  },
  {
    file: 'sequence/request.ts',
    code: "} else if (pattern === 'circular' && tools !== undefined && tools > 1) {",
    why: 'a whole number of tools',
  },
  {
    file: 'flanges/find-flange.ts',
    code: 'if (dn <= 32) return 2;',
    numbers: ['32'],
    why: 'between sizes: the next DN is 40',
  },
  {
    file: 'flanges/find-flange.ts',
    code: 'if (dn <= 250) return 3;',
    numbers: ['250'],
    why: 'between sizes: the next DN is 300',
  },
  {
    file: 'flanges/find-flange.ts',
    code: 'return dn <= 500 ? 4 : 5;',
    numbers: ['500'],
    why: 'between sizes: the next DN is 600',
  },
  {
    file: 'simulation/advice.ts',
    code: 'export function usualChoices(boltCount: number, toolsAtOnce = 1): readonly PatternChoice[] {',
    why: 'a whole number of tools',
  },
  {
    file: 'simulation/check-joint.ts',
    code: 'limit: boltCount < 4 ? 4 : MOST_BOLTS,',
    why: 'whole numbers of bolts; the limit that is told is tested at both ends',
  },
  {
    file: 'simulation/computed-loads.ts',
    code: 'const { joint, target_N, cap_N, division_N, setValues = 4, limit_percent = USUAL_LIMIT_PERCENT } = request;',
    why: 'a whole number of set values',
  },
  {
    file: 'simulation/computed-pass.ts',
    code: 'const CORRECTIONS = 4;',
    why: 'count of corrections, whole',
  },
  {
    file: 'simulation/computed-pass.ts',
    code: 'if (error < 1e-3 * level_N) break;',
    why: 'tolerance of an iteration; the plan is simulated again as rounded',
  },
];
