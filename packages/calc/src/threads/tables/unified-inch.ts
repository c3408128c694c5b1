import type { SourcedTable } from '../../tables/sourced-table.ts';

/** Unified threads of bolting and their published areas. */
export const UNIFIED_THREADS: SourcedTable = {
  standard: 'ASME B1.1',
  edition: '2003 and later',
  table: 'area tables; ASME PCC-1 area table',
  held: 'stored pages of the PCC-1 table; ASME B1.1 handbook values from memory',
  confidence: '99 %',
  statement: 'transcribed from public reproductions of ASME B1.1 and ASME PCC-1; confirm against your edition',
  text: `
designation   | tensileAreaPublished_in2 | rootAreaPublished_in2 | tensileAreaPcc1_in2 | rootAreaPcc1_in2 | flangeDefault
1/4-20 UNC    | 0.0318                   | 0.0269                |                     |                  | no
5/16-18 UNC   | 0.0524                   | 0.0454                |                     |                  | no
3/8-16 UNC    | 0.0775                   | 0.0678                |                     |                  | no
7/16-14 UNC   | 0.1063                   | 0.0933                |                     |                  | no
1/2-13 UNC    | 0.1419                   | 0.1257                | 0.1419              | 0.1257           | yes
9/16-12 UNC   | 0.182                    | 0.162                 |                     |                  | yes
5/8-11 UNC    | 0.226                    | 0.202                 | 0.226               | 0.2017           | yes
3/4-10 UNC    | 0.334                    | 0.302                 | 0.3345              | 0.3019           | yes
7/8-9 UNC     | 0.462                    | 0.419                 | 0.4617              | 0.4192           | yes
1-8 UNC       | 0.606                    | 0.551                 | 0.6057              | 0.5509           | yes
1 1/8-7 UNC   | 0.763                    | 0.693                 |                     |                  | no
1 1/4-7 UNC   | 0.969                    | 0.89                  |                     |                  | no
1 3/8-6 UNC   | 1.155                    | 1.054                 |                     |                  | no
1 1/2-6 UNC   | 1.405                    | 1.294                 |                     |                  | no
1 3/4-5 UNC   | 1.9                      | 1.74                  |                     |                  | no
2-4.5 UNC     | 2.5                      | 2.3                   |                     |                  | no
2 1/4-4.5 UNC | 3.25                     | 3.02                  |                     |                  | no
2 1/2-4 UNC   | 4.0                      | 3.72                  |                     |                  | no
2 3/4-4 UNC   | 4.93                     | 4.62                  |                     |                  | no
3-4 UNC       | 5.97                     | 5.62                  |                     |                  | no
3 1/4-4 UNC   | 7.1                      | 6.72                  |                     |                  | no
3 1/2-4 UNC   | 8.33                     | 7.92                  |                     |                  | no
3 3/4-4 UNC   | 9.66                     | 9.21                  |                     |                  | no
4-4 UNC       | 11.08                    | 10.61                 |                     |                  | no
1 1/8-8 UN    | 0.79                     | 0.728                 | 0.7905              | 0.7276           | yes
1 1/4-8 UN    | 1.0                      | 0.929                 | 0.9997              | 0.9289           | yes
1 3/8-8 UN    | 1.233                    | 1.155                 | 1.234               | 1.155            | yes
1 1/2-8 UN    | 1.492                    | 1.405                 | 1.492               | 1.405            | yes
1 5/8-8 UN    | 1.78                     | 1.68                  | 1.775               | 1.68             | yes
1 3/4-8 UN    | 2.08                     | 1.98                  | 2.082               | 1.979            | yes
1 7/8-8 UN    | 2.41                     | 2.3                   | 2.414               | 2.303            | yes
2-8 UN        | 2.77                     | 2.65                  | 2.771               | 2.652            | yes
2 1/8-8 UN    | 3.15                     | 3.03                  |                     |                  | yes
2 1/4-8 UN    | 3.56                     | 3.42                  | 3.557               | 3.422            | yes
2 3/8-8 UN    | 3.99                     | 3.85                  |                     |                  | yes
2 1/2-8 UN    | 4.44                     | 4.29                  | 4.442               | 4.291            | yes
2 5/8-8 UN    | 4.92                     | 4.76                  |                     |                  | yes
2 3/4-8 UN    | 5.43                     | 5.26                  | 5.425               | 5.258            | yes
2 7/8-8 UN    | 5.95                     | 5.78                  |                     |                  | yes
3-8 UN        | 6.51                     | 6.32                  | 6.506               | 6.324            | yes
3 1/4-8 UN    | 7.69                     | 7.49                  | 7.686               | 7.487            | yes
3 1/2-8 UN    | 8.96                     | 8.75                  | 8.963               | 8.748            | yes
3 3/4-8 UN    | 10.34                    | 10.11                 | 10.34               | 10.11            | yes
4-8 UN        | 11.81                    | 11.57                 | 11.81               | 11.57            | yes
`,
};
