/** One code list of gasket families; each table's wording is mapped to it. */
export const GASKET_FAMILY_CODES = [
  'spiral-wound',
  'grooved-metal',
  'corrugated-metal',
  'jacketed',
  'flat-metal',
  'ring-joint',
  'fibre-sheet',
  'ptfe-sheet',
  'eptfe-sheet',
  'graphite-sheet',
  'elastomer',
  'isolation-kit',
  'none',
] as const;
export type GasketFamilyCode = (typeof GASKET_FAMILY_CODES)[number];

export interface GasketFamily {
  readonly code: GasketFamilyCode;
  readonly name: string;
  /** Soft gaskets go with low-strength bolting; common practice. */
  readonly soft: boolean;
  /** Compresses more than 1.0 mm at assembly: wider face limits (PCC-1 appendix D). */
  readonly compressesMuch: boolean;
  /** Shape of its dimensions in the tables; none where only the maker knows. */
  readonly form?: 'spiral-wound' | 'flat-ring';
  /** A relaxation pass is usual (at least 4 h after assembly). */
  readonly relaxationPass: boolean;
  /** What may be done after it has been hot. */
  readonly retightening: 'never-after-hot' | 'cold-only' | 'in-site-window' | 'maker-only' | 'not-needed';
  readonly note: string;
}

/** Families with their rules of handling. Common practice; a site's tested data goes first. */
export const GASKET_FAMILIES: readonly GasketFamily[] = [
  {
    code: 'spiral-wound',
    name: 'Spiral wound',
    soft: false,
    compressesMuch: true,
    form: 'spiral-wound',
    relaxationPass: false,
    retightening: 'in-site-window',
    note: 'Seats until the guide ring carries; an inner ring keeps the windings from buckling inwards.',
  },
  {
    code: 'grooved-metal',
    name: 'Grooved metal with soft facing',
    soft: false,
    compressesMuch: false,
    relaxationPass: false,
    retightening: 'in-site-window',
    note: 'The code row is for the bare metal core, not for the faced gasket.',
  },
  {
    code: 'corrugated-metal',
    name: 'Corrugated metal with soft facing',
    soft: false,
    compressesMuch: false,
    relaxationPass: false,
    retightening: 'in-site-window',
    note: 'Several code rows by metal and filler.',
  },
  {
    code: 'jacketed',
    name: 'Metal jacketed',
    soft: false,
    compressesMuch: false,
    relaxationPass: false,
    retightening: 'in-site-window',
    note: 'Usual in exchangers; sensitive to face damage and to sliding by differential expansion.',
  },
  {
    code: 'flat-metal',
    name: 'Flat solid metal',
    soft: false,
    compressesMuch: false,
    relaxationPass: false,
    retightening: 'in-site-window',
    note: 'Needs good faces and a high seating stress.',
  },
  {
    code: 'ring-joint',
    name: 'Metal ring joint',
    soft: false,
    compressesMuch: false,
    relaxationPass: false,
    retightening: 'in-site-window',
    note: 'Groove inspected by touch and light; the ring is softer than the groove; raised faces do not touch.',
  },
  {
    code: 'fibre-sheet',
    name: 'Elastomer-bound fibre sheet',
    soft: true,
    compressesMuch: false,
    form: 'flat-ring',
    relaxationPass: true,
    retightening: 'never-after-hot',
    note: 'Hardens with heat: never retightened once it has been hot.',
  },
  {
    code: 'ptfe-sheet',
    name: 'PTFE sheet',
    soft: true,
    compressesMuch: false,
    form: 'flat-ring',
    relaxationPass: true,
    retightening: 'cold-only',
    note: 'Creeps: retightened cold within about 24 h or after the first cycle.',
  },
  {
    code: 'eptfe-sheet',
    name: 'Expanded PTFE sheet',
    soft: true,
    compressesMuch: true,
    form: 'flat-ring',
    relaxationPass: true,
    retightening: 'cold-only',
    note: 'Creeps and compresses much: retightened cold within about 24 h or after the first cycle.',
  },
  {
    code: 'graphite-sheet',
    name: 'Flexible graphite sheet',
    soft: true,
    compressesMuch: true,
    form: 'flat-ring',
    relaxationPass: false,
    retightening: 'in-site-window',
    note: 'No modern row in the code table: maker’s data.',
  },
  {
    code: 'elastomer',
    name: 'Elastomer sheet',
    soft: true,
    compressesMuch: true,
    form: 'flat-ring',
    relaxationPass: true,
    retightening: 'never-after-hot',
    note: 'Crushed easily: the maximum stress governs.',
  },
  {
    code: 'isolation-kit',
    name: 'Isolation kit',
    soft: true,
    compressesMuch: false,
    relaxationPass: false,
    retightening: 'maker-only',
    note: 'Sleeves and washers take part of the bolt hole; the maker’s torque with its source.',
  },
  {
    code: 'none',
    name: 'No gasket',
    soft: false,
    compressesMuch: false,
    relaxationPass: false,
    retightening: 'not-needed',
    note: 'Compact flanges and hub connectors: the maker’s values.',
  },
];

const byCode = new Map(GASKET_FAMILIES.map((family) => [family.code as string, family]));

/** The family of a code, undefined when the code is unknown. */
export function gasketFamily(code: string): GasketFamily | undefined {
  return byCode.get(code);
}
