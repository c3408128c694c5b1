import { stringify } from 'csv-stringify/sync';

/** Headers of the sample register: one wording per field that the import guesses without help. */
export const sampleHeaders = [
  'Tag',
  'Area',
  'System',
  'Subsystem',
  'Line No.',
  'Location',
  'Drawing No.',
  'Joint type',
  'Flange standard',
  'Size',
  'Rating',
  'Facing',
  'No. of bolts',
  'Bolt size',
  'Bolt length (mm)',
  'Bolt grade',
  'Gasket type',
  'Gasket detail',
  'No. of gaskets',
  'Insert thickness (mm)',
  'Service',
  'Design pressure (barg)',
  'Design temperature (°C)',
  'Test pack',
  'Test pressure (barg)',
  'Criticality',
  'Work scope',
  'Planned date',
  'Crew',
  'Equipment',
  'Viewed from',
  'Bolt 1 at',
  'Remarks',
] as const;

export type SampleCell = string | number | null;

interface Service {
  readonly area: string;
  readonly system: string;
  readonly medium: string;
  readonly pressure_bar: number;
  readonly temperature_C: number;
  readonly criticality: string;
  readonly crew: string;
}

// The plant is our own invention.
const feed: Service = {
  area: 'Feed section',
  system: 'S-10 Feed',
  medium: 'Gas oil',
  pressure_bar: 16,
  temperature_C: 180,
  criticality: 'B',
  crew: 'Crew 1',
};
const reactor: Service = {
  area: 'Reactor section',
  system: 'S-20 Reactor loop',
  medium: 'Hydrogen and oil',
  pressure_bar: 88,
  temperature_C: 385,
  criticality: 'A',
  crew: 'Crew 2',
};
const cooling: Service = {
  area: 'Utilities',
  system: 'S-70 Cooling water',
  medium: 'Cooling water',
  pressure_bar: 6,
  temperature_C: 45,
  criticality: 'C',
  crew: 'Crew 3',
};

type Joint = readonly [
  service: Service,
  line: string,
  kind: string,
  standard: string,
  size: string | number,
  rating: string,
  facing: string,
  gasket: string,
  detail: string,
  gaskets: number | null,
  insert_mm: number | null,
  item: string,
  remark: string,
];

const spiral = ['SWG', '316L, graphite, inner ring'] as const;
const ring = ['RTJ', 'soft iron, octagonal'] as const;
const fibre = ['CNAF', '2 mm'] as const;

const joints: readonly Joint[] = [
  [feed, 'L-1001', 'Flange', 'ASME B16.5', '8"', '150#', 'RF', ...spiral, null, null, 'P-101A', ''],
  [feed, 'L-1001', 'Flange', 'ASME B16.5', '8"', '150#', 'RF', ...spiral, null, null, 'P-101B', ''],
  [feed, 'L-1001', 'Spade', 'ASME B16.5', '8"', '150#', 'RF', ...spiral, 2, 16, 'V-110', 'isolation of P-101'],
  [feed, 'L-1002', 'Orifice plate', 'ASME B16.5', '6"', '300#', 'RF', ...spiral, 2, 3.2, 'FE-1002', ''],
  [feed, 'L-1002', 'Flange', 'ASME B16.5', '1 1/2"', '300#', 'RF', ...spiral, null, null, 'PSV-112', 'inlet'],
  [feed, 'L-1003', 'Flange', 'ASME B16.5', '2"', '150#', 'RF', ...spiral, null, null, 'PSV-112', 'outlet'],
  [feed, 'L-1004', 'Wafer check valve', 'ASME B16.5', '8"', '150#', 'RF', ...spiral, 2, 127, 'NRV-104', ''],
  [feed, 'L-1005', 'Manway', 'ASME B16.5', '24"', '150#', 'RF', ...spiral, null, null, 'D-105', 'davit'],
  [reactor, 'L-2001', 'RTJ flange', 'ASME B16.5', '10"', '600#', 'RTJ', ...ring, null, null, 'R-201', 'inlet'],
  [reactor, 'L-2002', 'RTJ flange', 'ASME B16.5', '10"', '600#', 'RTJ', ...ring, null, null, 'R-201', 'outlet'],
  [reactor, 'L-2003', 'RTJ flange', 'ASME B16.5', '4"', '900#', 'RTJ', ...ring, null, null, 'XV-203', ''],
  [
    reactor,
    'L-2004',
    'Spectacle blind',
    'ASME B16.5',
    '4"',
    '600#',
    'RF',
    ...spiral,
    2,
    28,
    'SB-204',
    'swing to closed',
  ],
  [
    reactor,
    'L-2005',
    'Exchanger girth flange',
    '',
    '',
    '',
    '',
    'Kammprofile',
    '316L, graphite faced',
    null,
    null,
    'E-205',
    'drawing E-205-03',
  ],
  [reactor, 'L-2006', 'Flange', 'ASME B16.5', '3/4"', '600#', 'RF', ...spiral, null, null, 'PT-206', ''],
  [
    reactor,
    'L-2007',
    'Compressor suction nozzle',
    'ASME B16.5',
    '12"',
    '300#',
    'RF',
    ...spiral,
    null,
    null,
    'K-207',
    'alignment',
  ],
  [cooling, 'L-7001', 'Flange', 'EN 1092-1', 'DN 100', 'PN 16', 'FF', ...fibre, null, null, 'E-205', 'tube side in'],
  [cooling, 'L-7001', 'Flange', 'EN 1092-1', 'DN 100', 'PN 16', 'FF', ...fibre, null, null, 'E-205', 'tube side out'],
  [
    cooling,
    'L-7002',
    'Flange',
    'EN 1092-1',
    'DN 65',
    'PN 16',
    'FF',
    ...fibre,
    null,
    null,
    'E-208',
    '4 bolts, old drilling',
  ],
  [cooling, 'L-7003', 'Flange', 'EN 1092-1', '200 NB', 'PN 10', 'FF', ...fibre, null, null, 'P-701', 'suction'],
  [
    cooling,
    'L-7004',
    'GRP flange',
    'EN 1092-1',
    'DN 150',
    'PN 10',
    'FF',
    'EPDM',
    '3 mm',
    null,
    null,
    'T-704',
    'low bolt load',
  ],
];

/** Bolts as the sheet states them; elsewhere the standard fills them in. */
const statedBolts: Readonly<Record<number, readonly [count: number | null, size: string | null]>> = {
  0: [8, '3/4"'],
  8: [16, '1 1/4"'],
  15: [8, 'M16'],
  17: [4, null],
};

function sampleRow(joint: Joint, index: number): SampleCell[] {
  const [service, line, kind, standard, size, rating, facing, gasket, detail, gaskets, insert_mm, item, remark] = joint;
  const [count, bolt] = statedBolts[index] ?? [null, null];
  const unit = line.slice(2, 3);
  const number = String(index + 1).padStart(3, '0');
  return [
    `J-${unit}${number}`,
    service.area,
    service.system,
    `${service.system.slice(0, 4)}-${(index % 2) + 1}`,
    line,
    `level ${(index % 4) + 1}`,
    `ISO-${line.slice(2)}`,
    kind,
    standard || null,
    size || null,
    rating || null,
    facing || null,
    count,
    bolt,
    null,
    rating.startsWith('PN') ? '8.8' : 'B7',
    gasket,
    detail,
    gaskets,
    insert_mm,
    service.medium,
    service.pressure_bar,
    service.temperature_C,
    `TP-${unit}0${(index % 3) + 1}`,
    Math.round(service.pressure_bar * 15) / 10,
    service.criticality,
    kind === 'Compressor suction nozzle' ? 'new' : 'break and remake',
    `2027-05-${String(3 + (index % 20)).padStart(2, '0')}`,
    service.crew,
    item,
    index % 2 === 0 ? 'downstream' : 'upstream',
    'top',
    remark || null,
  ];
}

/** Rows of the sample register in the order of its headers. */
export const sampleRows: readonly (readonly SampleCell[])[] = joints.map(sampleRow);

/** The sample register as CSV with a byte-order mark, so that spreadsheet programs read ° and ½ rightly. */
export function sampleRegisterCsv(): string {
  return `\ufeff${stringify([[...sampleHeaders], ...sampleRows.map((row) => [...row])])}`;
}
