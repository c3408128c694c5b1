import type { SourcedTable } from '../../tables/sourced-table.ts';

/** Heavy hex nuts and the room a wrench needs, inch bolting. */
export const HEAVY_HEX_NUTS_INCH: SourcedTable = {
  standard: 'ASME B18.2.2; TEMA Table D-5',
  edition: 'B18.2.2-2015; TEMA 9th edition',
  table: 'heavy hex nuts; bolting data recommended minimum',
  held: 'stored pages; TEMA from memory',
  confidence: 'nuts 99 %, TEMA 93 %',
  statement: 'transcribed from public reproductions of ASME B18.2.2 and TEMA; confirm against your edition',
  text: `
size_in | acrossFlats_mm | acrossFlatsMax_in | acrossFlatsMin_in | height_in | spacing_in | radial_in | edge_in | wrench_in | basis
0.5     | 22.22          | 0.875             | 0.85              | 0.504     | 1.25       | 0.8125    | 0.625   | 1.5       | two stored pages + file
0.625   | 26.99          | 1.062             | 1.031             | 0.631     | 1.5        | 0.9375    | 0.75    | 1.75      | two stored pages + file
0.75    | 31.75          | 1.25              | 1.212             | 0.758     | 1.75       | 1.125     | 0.8125  | 2.0625    | two stored pages + file
0.875   | 36.51          | 1.438             | 1.394             | 0.885     | 2.0625     | 1.25      | 0.9375  | 2.375     | two stored pages + file
1       | 41.27          | 1.625             | 1.575             | 1.012     | 2.25       | 1.375     | 1.0625  | 2.625     | two stored pages + file
1.125   | 46.04          | 1.812             | 1.756             | 1.139     | 2.5        | 1.5       | 1.125   | 2.875     | two stored pages + file
1.25    | 50.8           | 2.0               | 1.938             | 1.251     | 2.8125     | 1.75      | 1.25    | 3.25      | two stored pages + file
1.375   | 55.56          | 2.188             | 2.119             | 1.378     | 3.0625     | 1.875     | 1.375   | 3.5       | two stored pages + file
1.5     | 60.32          | 2.375             | 2.3               | 1.505     | 3.25       | 2.0       | 1.5     | 3.75      | two stored pages + file
1.625   | 65.09          | 2.562             | 2.481             | 1.632     | 3.5        | 2.125     | 1.625   | 4.0       | two stored pages + file
1.75    | 69.85          | 2.75              | 2.662             | 1.759     | 3.75       | 2.25      | 1.75    | 4.25      | two stored pages + file
1.875   | 74.61          | 2.938             | 2.844             | 1.886     | 4.0        | 2.375     | 1.875   | 4.5       | memory only (missing from the stored tables)
2       | 79.38          | 3.125             | 3.025             | 2.013     | 4.25       | 2.5       | 2.0     | 4.75      | two stored pages + file
2.25    | 88.9           | 3.5               | 3.388             | 2.251     | 4.75       | 2.75      | 2.25    | 5.25      | two stored pages + file
2.5     | 98.42          | 3.875             | 3.75              | 2.505     | 5.25       | 3.0625    | 2.375   | 5.875     | two stored pages + file
2.75    | 107.95         | 4.25              | 4.112             | 2.759     | 5.75       | 3.375     | 2.625   | 6.5       | two stored pages + file
3       | 117.47         | 4.625             | 4.475             | 3.013     | 6.25       | 3.625     | 2.875   | 7.0       | two stored pages + file
3.25    | 127            | 5.0               | 4.838             | 3.252     | 6.625      | 3.75      | 3.0     | 7.25      | two stored pages + file
3.5     | 136.53         | 5.375             | 5.2               | 3.506     | 7.125      | 4.125     | 3.25    | 8.0       | two stored pages + file
3.75    | 146.05         | 5.75              | 5.562             | 3.76      | 7.625      | 4.4375    | 3.5     | 8.625     | two stored pages + file
4       | 155.57         | 6.125             | 5.925             | 4.014     | 8.125      | 4.625     | 3.625   | 9.0       | two stored pages + file
`,
};
