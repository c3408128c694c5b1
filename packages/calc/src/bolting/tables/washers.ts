import type { SourcedTable } from '../../tables/sourced-table.ts';

/** Plain hardened washers: ISO 7089 for metric bolting, ASTM F436 for inch bolting. */
export const WASHERS: SourcedTable = {
  standard: 'ISO 7089 and ASTM F436',
  edition: '2000; 2011',
  table: 'plain washers, nominal; F436 type 1, nominal diameters and greatest thickness',
  held: 'from memory',
  confidence: 'medium',
  statement: 'From memory of the standards: measure the washer, or enter its dimensions with their source.',
  text: `
size | insideDiameter_mm | outsideDiameter_mm | thickness_mm
M8 | 8.4 | 16 | 1.6
M10 | 10.5 | 20 | 2
M12 | 13 | 24 | 2.5
M14 | 15 | 28 | 2.5
M16 | 17 | 30 | 3
M20 | 21 | 37 | 3
M24 | 25 | 44 | 4
M27 | 28 | 50 | 4
M30 | 31 | 56 | 4
M33 | 34 | 60 | 5
M36 | 37 | 66 | 5
M39 | 42 | 72 | 6
M42 | 45 | 78 | 8
M45 | 48 | 85 | 8
M48 | 52 | 92 | 8
M52 | 56 | 98 | 8
M56 | 62 | 105 | 10
M60 | 66 | 110 | 10
M64 | 70 | 115 | 10
1/2 | 13.5 | 27 | 4.5
5/8 | 17.5 | 33.3 | 4.5
3/4 | 20.6 | 37.3 | 4.5
7/8 | 23.8 | 44.5 | 4.5
1 | 28.6 | 50.8 | 4.5
1 1/8 | 31.8 | 57.2 | 4.5
1 1/4 | 34.9 | 63.5 | 4.5
1 3/8 | 38.1 | 69.9 | 4.5
1 1/2 | 41.3 | 76.2 | 4.5
1 3/4 | 47.6 | 85.7 | 7.1
2 | 54 | 95.3 | 7.1
2 1/4 | 60.3 | 101.6 | 8.6
2 1/2 | 66.7 | 114.3 | 8.6
2 3/4 | 73 | 127 | 8.6
3 | 79.4 | 139.7 | 8.6
`,
};
