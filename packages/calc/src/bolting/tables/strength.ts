import type { SourcedTable } from '../../tables/sourced-table.ts';

/** Minimum strength of bolting by grade and diameter step. */
export const BOLTING_STRENGTH: SourcedTable = {
  standard: 'ASTM A193, ASTM A320, ISO 898-1',
  edition: 'A193/A193M and A320/A320M as current about 2020; ISO 898-1:2013',
  table: 'mechanical requirements',
  held: 'ksi from stored pages, MPa mostly from memory',
  confidence: '97 % (B8M class 2 upper sizes 92 %)',
  statement:
    'transcribed from public reproductions of ASTM A193, ASTM A320 and ISO 898-1; confirm against your edition',
  text: `
specification | grade       | over_mm | upTo_mm | over_in | upTo_in | tensile_MPa | yield_MPa | proof_MPa | tensile_ksi | yield_ksi | note
ASTM A193     | B7          |         | 64      |         | 2.5     | 860         | 720       |           | 125         | 105       | some pages print 725 MPa; A193M table value is 720
ASTM A193     | B7          | 64      | 100     | 2.5     | 4       | 795         | 655       |           | 115         | 95        | one page prints 790 MPa tensile
ASTM A193     | B7          | 100     | 180     | 4       | 7       | 690         | 515       |           | 100         | 75        |
ASTM A193     | B7M         |         | 100     |         | 4       | 690         | 550       |           | 100         | 80        | max hardness 235 HBW / 99 HRB
ASTM A193     | B7M         | 100     | 180     | 4       | 7       | 690         | 515       |           | 100         | 75        |
ASTM A193     | B16         |         | 64      |         | 2.5     | 860         | 725       |           | 125         | 105       |
ASTM A193     | B16         | 64      | 100     | 2.5     | 4       | 760         | 655       |           | 110         | 95        |
ASTM A193     | B16         | 100     | 200     | 4       | 8       | 690         | 585       |           | 100         | 85        |
ASTM A193     | B8 Class 1  |         |         |         |         | 515         | 205       |           | 75          | 30        | all diameters; solution treated
ASTM A193     | B8M Class 1 |         |         |         |         | 515         | 205       |           | 75          | 30        | all diameters; solution treated
ASTM A193     | B8 Class 2  |         | 20      |         | 0.75    | 860         | 690       |           | 125         | 100       | strain hardened
ASTM A193     | B8 Class 2  | 20      | 24      | 0.75    | 1       | 795         | 550       |           | 115         | 80        | strain hardened
ASTM A193     | B8 Class 2  | 24      | 30      | 1       | 1.25    | 725         | 450       |           | 105         | 65        | strain hardened
ASTM A193     | B8 Class 2  | 30      | 36      | 1.25    | 1.5     | 690         | 345       |           | 100         | 50        | strain hardened
ASTM A193     | B8M Class 2 |         | 20      |         | 0.75    | 760         | 655       |           | 110         | 95        | strain hardened
ASTM A193     | B8M Class 2 | 20      | 24      | 0.75    | 1       | 690         | 550       |           | 100         | 80        | strain hardened
ASTM A193     | B8M Class 2 | 24      | 30      | 1       | 1.25    | 655         | 450       |           | 95          | 65        | strain hardened
ASTM A193     | B8M Class 2 | 30      | 36      | 1.25    | 1.5     | 620         | 345       |           | 90          | 50        | strain hardened
ASTM A320     | L7          |         | 65      |         | 2.5     | 860         | 725       |           | 125         | 105       |
ASTM A320     | L7M         |         | 65      |         | 2.5     | 690         | 550       |           | 100         | 80        | max hardness 235 HBW / 99 HRB
ASTM A320     | L43         |         | 100     |         | 4       | 860         | 725       |           | 125         | 105       |
ISO 898-1     | 5.6         |         | 39      |         |         | 500         | 300       | 280       |             |           |
ISO 898-1     | 8.8         |         | 16      |         |         | 800         | 640       | 580       |             |           | d <= 16 mm
ISO 898-1     | 8.8         | 16      | 39      |         |         | 830         | 660       | 600       |             |           | d > 16 mm
ISO 898-1     | 10.9        |         | 39      |         |         | 1040        | 940       | 830       |             |           | nominal values 1000/900
ISO 898-1     | 12.9        |         | 39      |         |         | 1220        | 1100      | 970       |             |           | nominal values 1200/1080
`,
};
