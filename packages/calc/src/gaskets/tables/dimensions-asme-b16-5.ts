import type { SourcedTable } from '../../tables/sourced-table.ts';

/** Gasket dimensions by flange. */
export const GASKET_DIMENSIONS_ASME_B16_5: SourcedTable = {
  standard: 'ASME B16.20, ASME B16.21',
  edition: 'not stated by the sources',
  table: 'gasket dimensions by flange',
  held: 'public files and rules',
  confidence: 'B16.20 92-97 %, B16.21 96 %',
  statement: 'transcribed from public reproductions of ASME B16.20/B16.21; confirm against your edition',
  text: `
standard   | rating | size    | form         | contactInside_mm | contactOutside_mm | innerRingInside_mm | outerRingOutside_mm | thickness_mm | basis      | note
ASME-B16.5 | 150    | NPS0.5  | spiral-wound | 19.1             | 31.8              | 14.2               | 47.8                | 4.5          | F4         |
ASME-B16.5 | 150    | NPS0.5  | flat-ring    | 21               | 34.9              |                    | 48.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS0.75 | spiral-wound | 25.4             | 39.6              | 20.6               | 57.2                | 4.5          | F4         |
ASME-B16.5 | 150    | NPS0.75 | flat-ring    | 27               | 42.9              |                    | 57.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS1    | spiral-wound | 31.8             | 47.8              | 26.9               | 66.8                | 4.5          | F4         |
ASME-B16.5 | 150    | NPS1    | flat-ring    | 33               | 50.8              |                    | 67.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS1.25 | spiral-wound | 47.8             | 60.5              | 38.1               | 76.2                | 4.5          | F4         |
ASME-B16.5 | 150    | NPS1.25 | flat-ring    | 42               | 63.5              |                    | 76                  | 1.6          | F4+rule    |
ASME-B16.5 | 150    | NPS1.5  | spiral-wound | 54.1             | 69.9              | 44.5               | 85.9                | 4.5          | F4         |
ASME-B16.5 | 150    | NPS1.5  | flat-ring    | 49               | 73.0              |                    | 86.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS2    | spiral-wound | 69.9             | 85.9              | 55.6               | 104.9               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS2    | flat-ring    | 60               | 92.1              |                    | 105.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS2.5  | spiral-wound | 82.6             | 98.6              | 66.5               | 124.0               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS2.5  | flat-ring    | 73               | 104.8             |                    | 124.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS3    | spiral-wound | 101.6            | 120.7             | 81.0               | 136.7               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS3    | flat-ring    | 89               | 127.0             |                    | 137.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS3.5  | spiral-wound | 114.3            | 133.4             |                    | 161.9               | 4.5          | F4         | size not in ASME B16.20; file value
ASME-B16.5 | 150    | NPS3.5  | flat-ring    | 102              | 139.7             |                    | 162                 | 1.6          | F4+rule    |
ASME-B16.5 | 150    | NPS4    | spiral-wound | 127.0            | 149.4             | 106.4              | 174.8               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS4    | flat-ring    | 114              | 157.2             |                    | 175.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS5    | spiral-wound | 155.7            | 177.8             | 131.8              | 196.9               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS5    | flat-ring    | 141              | 185.7             |                    | 197.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS6    | spiral-wound | 182.6            | 209.6             | 157.2              | 222.3               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS6    | flat-ring    | 168              | 215.9             |                    | 222.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS8    | spiral-wound | 233.4            | 263.7             | 215.9              | 279.4               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS8    | flat-ring    | 219              | 269.9             |                    | 279.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS10   | spiral-wound | 287.3            | 317.5             | 268.2              | 339.9               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS10   | flat-ring    | 273              | 323.8             |                    | 340.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS12   | spiral-wound | 339.9            | 374.7             | 317.5              | 409.7               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS12   | flat-ring    | 324              | 381.0             |                    | 410.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS14   | spiral-wound | 371.6            | 406.4             | 349.3              | 450.9               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS14   | flat-ring    | 356              | 412.8             |                    | 451.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS16   | spiral-wound | 422.4            | 463.6             | 400.1              | 514.4               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS16   | flat-ring    | 406              | 469.9             |                    | 514.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS18   | spiral-wound | 474.7            | 527.1             | 449.3              | 549.4               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS18   | flat-ring    | 457              | 533.4             |                    | 549.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS20   | spiral-wound | 525.5            | 577.9             | 500.1              | 606.6               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS20   | flat-ring    | 508              | 584.2             |                    | 606.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 150    | NPS22   | flat-ring    | 559              | 641.4             |                    | 660                 | 1.6          | rule       |
ASME-B16.5 | 150    | NPS24   | spiral-wound | 628.7            | 685.8             | 603.3              | 717.6               | 4.5          | F4         |
ASME-B16.5 | 150    | NPS24   | flat-ring    | 610              | 692.2             |                    | 718.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS0.5  | spiral-wound | 19.1             | 31.8              | 14.2               | 54.1                | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS0.5  | flat-ring    | 21               | 34.9              |                    | 54.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS0.75 | spiral-wound | 25.4             | 39.6              | 20.6               | 66.8                | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS0.75 | flat-ring    | 27               | 42.9              |                    | 67.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS1    | spiral-wound | 31.8             | 47.8              | 26.9               | 73.2                | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS1    | flat-ring    | 33               | 50.8              |                    | 73.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS1.25 | spiral-wound | 47.8             | 60.5              | 38.1               | 82.6                | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS1.25 | flat-ring    | 42               | 63.5              |                    | 83                  | 1.6          | F4+rule    |
ASME-B16.5 | 300    | NPS1.5  | spiral-wound | 54.1             | 69.9              | 44.5               | 95.3                | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS1.5  | flat-ring    | 49               | 73.0              |                    | 95.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS2    | spiral-wound | 69.9             | 85.9              | 55.6               | 111.3               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS2    | flat-ring    | 60               | 92.1              |                    | 111.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS2.5  | spiral-wound | 82.6             | 98.6              | 66.5               | 130.3               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS2.5  | flat-ring    | 73               | 104.8             |                    | 130.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS3    | spiral-wound | 101.6            | 120.7             | 81.0               | 149.4               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS3    | flat-ring    | 89               | 127.0             |                    | 149.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS3.5  | spiral-wound | 114.3            | 133.4             |                    | 165.1               | 4.5          | F4         | size not in ASME B16.20; file value
ASME-B16.5 | 300    | NPS3.5  | flat-ring    | 102              | 139.7             |                    | 165                 | 1.6          | F4+rule    |
ASME-B16.5 | 300    | NPS4    | spiral-wound | 127.0            | 149.4             | 106.4              | 181.1               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS4    | flat-ring    | 114              | 157.2             |                    | 181.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS5    | spiral-wound | 155.7            | 177.8             | 131.8              | 215.9               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS5    | flat-ring    | 141              | 185.7             |                    | 216.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS6    | spiral-wound | 182.6            | 209.6             | 157.2              | 251.0               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS6    | flat-ring    | 168              | 215.9             |                    | 251.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS8    | spiral-wound | 233.4            | 263.7             | 215.9              | 308.1               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS8    | flat-ring    | 219              | 269.9             |                    | 308.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS10   | spiral-wound | 287.3            | 317.5             | 268.2              | 362.0               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS10   | flat-ring    | 273              | 323.8             |                    | 362.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS12   | spiral-wound | 339.9            | 374.7             | 317.5              | 422.4               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS12   | flat-ring    | 324              | 381.0             |                    | 422.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS14   | spiral-wound | 371.6            | 406.4             | 349.3              | 485.9               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS14   | flat-ring    | 356              | 412.8             |                    | 486.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS16   | spiral-wound | 422.4            | 463.6             | 400.1              | 539.8               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS16   | flat-ring    | 406              | 469.9             |                    | 540.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS18   | spiral-wound | 474.7            | 527.1             | 449.3              | 596.9               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS18   | flat-ring    | 457              | 533.4             |                    | 597.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS20   | spiral-wound | 525.5            | 577.9             | 500.1              | 654.1               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS20   | flat-ring    | 508              | 584.2             |                    | 654.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 300    | NPS22   | flat-ring    | 559              | 641.4             |                    | 705                 | 1.6          | rule       |
ASME-B16.5 | 300    | NPS24   | spiral-wound | 628.7            | 685.8             | 603.3              | 774.7               | 4.5          | F4+CQ      |
ASME-B16.5 | 300    | NPS24   | flat-ring    | 610              | 692.2             |                    | 775.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS0.5  | spiral-wound | 19.1             | 31.8              | 14.2               | 54.1                | 4.5          | F4         |
ASME-B16.5 | 400    | NPS0.5  | flat-ring    | 21               | 34.9              |                    | 54.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS0.75 | spiral-wound | 25.4             | 39.6              | 20.6               | 66.8                | 4.5          | F4         |
ASME-B16.5 | 400    | NPS0.75 | flat-ring    | 27               | 42.9              |                    | 67.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS1    | spiral-wound | 31.8             | 47.8              | 26.9               | 73.2                | 4.5          | F4         |
ASME-B16.5 | 400    | NPS1    | flat-ring    | 33               | 50.8              |                    | 73.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS1.25 | spiral-wound | 47.8             | 60.5              | 38.1               | 82.6                | 4.5          | F4         |
ASME-B16.5 | 400    | NPS1.25 | flat-ring    | 42               | 63.5              |                    | 83                  | 1.6          | F4+rule    |
ASME-B16.5 | 400    | NPS1.5  | spiral-wound | 54.1             | 69.9              | 44.5               | 95.3                | 4.5          | F4         |
ASME-B16.5 | 400    | NPS1.5  | flat-ring    | 49               | 73.0              |                    | 95.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS2    | spiral-wound | 69.9             | 85.9              | 55.6               | 111.3               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS2    | flat-ring    | 60               | 92.1              |                    | 111.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS2.5  | spiral-wound | 82.6             | 98.6              | 66.5               | 130.3               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS2.5  | flat-ring    | 73               | 104.8             |                    | 130.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS3    | spiral-wound | 101.6            | 120.7             | 81.0               | 149.4               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS3    | flat-ring    | 89               | 127.0             |                    | 149.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS3.5  | spiral-wound | 104.8            | 133.4             |                    | 161.9               | 4.5          | F4         | size not in ASME B16.20; file value
ASME-B16.5 | 400    | NPS3.5  | flat-ring    | 102              | 139.7             |                    | 162                 | 1.6          | F4+rule    |
ASME-B16.5 | 400    | NPS4    | spiral-wound | 120.7            | 149.4             | 102.6              | 177.8               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS4    | flat-ring    | 114              | 157.2             |                    | 178.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS5    | spiral-wound | 147.6            | 177.8             | 128.3              | 212.9               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS5    | flat-ring    | 141              | 185.7             |                    | 213.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS6    | spiral-wound | 174.8            | 209.6             | 154.9              | 247.7               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS6    | flat-ring    | 168              | 215.9             |                    | 248.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS8    | spiral-wound | 225.6            | 263.7             | 205.7              | 304.8               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS8    | flat-ring    | 219              | 269.9             |                    | 305.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS10   | spiral-wound | 274.6            | 317.5             | 255.3              | 358.9               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS10   | flat-ring    | 273              | 323.8             |                    | 359.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS12   | spiral-wound | 327.2            | 374.7             | 307.3              | 419.1               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS12   | flat-ring    | 324              | 381.0             |                    | 419.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS14   | spiral-wound | 362.0            | 406.4             | 342.9              | 482.6               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS14   | flat-ring    | 356              | 412.8             |                    | 483.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS16   | spiral-wound | 412.8            | 463.6             | 389.9              | 536.7               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS16   | flat-ring    | 406              | 469.9             |                    | 537.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS18   | spiral-wound | 469.9            | 527.1             | 438.2              | 593.9               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS18   | flat-ring    | 457              | 533.4             |                    | 594.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS20   | spiral-wound | 520.7            | 577.9             | 489.0              | 647.7               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS20   | flat-ring    | 508              | 584.2             |                    | 648.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 400    | NPS22   | flat-ring    | 559              | 641.4             |                    | 702                 | 1.6          | rule       |
ASME-B16.5 | 400    | NPS24   | spiral-wound | 628.7            | 685.8             | 590.6              | 768.4               | 4.5          | F4         |
ASME-B16.5 | 400    | NPS24   | flat-ring    | 610              | 692.2             |                    | 768.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS0.5  | spiral-wound | 19.1             | 31.8              | 14.2               | 54.1                | 4.5          | F4         |
ASME-B16.5 | 600    | NPS0.5  | flat-ring    | 21               | 34.9              |                    | 54.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS0.75 | spiral-wound | 25.4             | 39.6              | 20.6               | 66.8                | 4.5          | F4         |
ASME-B16.5 | 600    | NPS0.75 | flat-ring    | 27               | 42.9              |                    | 67.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS1    | spiral-wound | 31.8             | 47.8              | 26.9               | 73.2                | 4.5          | F4         |
ASME-B16.5 | 600    | NPS1    | flat-ring    | 33               | 50.8              |                    | 73.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS1.25 | spiral-wound | 47.8             | 60.5              | 38.1               | 82.6                | 4.5          | F4         |
ASME-B16.5 | 600    | NPS1.25 | flat-ring    | 42               | 63.5              |                    | 83                  | 1.6          | F4+rule    |
ASME-B16.5 | 600    | NPS1.5  | spiral-wound | 54.1             | 69.9              | 44.5               | 95.3                | 4.5          | F4         |
ASME-B16.5 | 600    | NPS1.5  | flat-ring    | 49               | 73.0              |                    | 95.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS2    | spiral-wound | 69.9             | 85.9              | 55.6               | 111.3               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS2    | flat-ring    | 60               | 92.1              |                    | 111.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS2.5  | spiral-wound | 82.6             | 98.6              | 66.5               | 130.3               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS2.5  | flat-ring    | 73               | 104.8             |                    | 130.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS3    | spiral-wound | 101.6            | 120.7             | 78.7               | 149.4               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS3    | flat-ring    | 89               | 127.0             |                    | 149.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS3.5  | spiral-wound | 104.8            | 133.4             |                    | 161.9               | 4.5          | F4         | size not in ASME B16.20; file value
ASME-B16.5 | 600    | NPS3.5  | flat-ring    | 102              | 139.7             |                    | 162                 | 1.6          | F4+rule    |
ASME-B16.5 | 600    | NPS4    | spiral-wound | 120.7            | 149.4             | 102.6              | 193.8               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS4    | flat-ring    | 114              | 157.2             |                    | 194.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS5    | spiral-wound | 147.6            | 177.8             | 128.3              | 241.3               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS5    | flat-ring    | 141              | 185.7             |                    | 241.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS6    | spiral-wound | 174.8            | 209.6             | 154.9              | 266.7               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS6    | flat-ring    | 168              | 215.9             |                    | 267.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS8    | spiral-wound | 225.6            | 263.7             | 205.7              | 320.8               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS8    | flat-ring    | 219              | 269.9             |                    | 321.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS10   | spiral-wound | 274.6            | 317.5             | 255.3              | 400.1               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS10   | flat-ring    | 273              | 323.8             |                    | 400.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS12   | spiral-wound | 327.2            | 374.7             | 307.3              | 457.2               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS12   | flat-ring    | 324              | 381.0             |                    | 457.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS14   | spiral-wound | 362.0            | 406.4             | 342.9              | 492.3               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS14   | flat-ring    | 356              | 412.8             |                    | 492.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS16   | spiral-wound | 412.8            | 463.6             | 389.9              | 565.2               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS16   | flat-ring    | 406              | 469.9             |                    | 565.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS18   | spiral-wound | 469.9            | 527.1             | 438.2              | 612.9               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS18   | flat-ring    | 457              | 533.4             |                    | 613.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS20   | spiral-wound | 520.7            | 577.9             | 489.0              | 682.8               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS20   | flat-ring    | 508              | 584.2             |                    | 683.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 600    | NPS22   | flat-ring    | 559              | 641.4             |                    | 733                 | 1.6          | rule       |
ASME-B16.5 | 600    | NPS24   | spiral-wound | 628.7            | 685.8             | 590.6              | 790.7               | 4.5          | F4         |
ASME-B16.5 | 600    | NPS24   | flat-ring    | 610              | 692.2             |                    | 791.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS0.5  | spiral-wound | 19.1             | 31.8              | 14.2               | 63.5                | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS0.5  | flat-ring    | 21               | 34.9              |                    | 64.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS0.75 | spiral-wound | 25.4             | 39.6              | 20.6               | 69.9                | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS0.75 | flat-ring    | 27               | 42.9              |                    | 70.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS1    | spiral-wound | 31.8             | 47.8              | 26.9               | 79.5                | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS1    | flat-ring    | 33               | 50.8              |                    | 79.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS1.25 | spiral-wound | 39.6             | 60.5              | 33.4               | 88.9                | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS1.25 | flat-ring    | 42               | 63.5              |                    | 89                  | 1.6          | F4+rule    |
ASME-B16.5 | 900    | NPS1.5  | spiral-wound | 47.8             | 69.9              | 41.4               | 98.6                | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS1.5  | flat-ring    | 49               | 73.0              |                    | 98.0                | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS2    | spiral-wound | 58.7             | 85.9              | 52.3               | 143.0               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS2    | flat-ring    | 60               | 92.1              |                    | 143.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS2.5  | spiral-wound | 69.9             | 98.6              | 63.5               | 165.1               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS2.5  | flat-ring    | 73               | 104.8             |                    | 165.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS3    | spiral-wound | 95.3             | 120.7             | 78.7               | 168.4               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS3    | flat-ring    | 89               | 127.0             |                    | 168.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS4    | spiral-wound | 120.7            | 149.4             | 102.6              | 206.5               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS4    | flat-ring    | 114              | 157.2             |                    | 206.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS5    | spiral-wound | 147.6            | 177.8             | 128.3              | 247.7               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS5    | flat-ring    | 141              | 185.7             |                    | 248.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS6    | spiral-wound | 174.8            | 209.6             | 154.9              | 289.1               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS6    | flat-ring    | 168              | 215.9             |                    | 289.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS8    | spiral-wound | 222.3            | 257.3             | 196.9              | 358.9               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS8    | flat-ring    | 219              | 269.9             |                    | 359.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS10   | spiral-wound | 276.4            | 311.2             | 246.1              | 435.1               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS10   | flat-ring    | 273              | 323.8             |                    | 435.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS12   | spiral-wound | 323.9            | 368.3             | 292.1              | 498.6               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS12   | flat-ring    | 324              | 381.0             |                    | 498.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS14   | spiral-wound | 355.6            | 400.1             | 320.8              | 520.7               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS14   | flat-ring    | 356              | 412.8             |                    | 521.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS16   | spiral-wound | 412.8            | 457.2             | 374.7              | 574.8               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS16   | flat-ring    | 406              | 469.9             |                    | 575.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS18   | spiral-wound | 463.6            | 520.7             | 425.5              | 638.3               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS18   | flat-ring    | 457              | 533.4             |                    | 638.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS20   | spiral-wound | 520.7            | 571.5             | 482.6              | 698.5               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS20   | flat-ring    | 508              | 584.2             |                    | 699.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 900    | NPS24   | spiral-wound | 628.7            | 679.5             | 590.6              | 838.2               | 4.5          | F4+PE      |
ASME-B16.5 | 900    | NPS24   | flat-ring    | 610              | 692.2             |                    | 838.0               | 1.6          | F4+F3+rule |
ASME-B16.5 | 1500   | NPS0.5  | spiral-wound | 19.1             | 31.8              | 14.2               | 63.5                | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS0.75 | spiral-wound | 25.4             | 39.6              | 20.6               | 69.9                | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS1    | spiral-wound | 31.8             | 47.8              | 26.9               | 79.5                | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS1.25 | spiral-wound | 39.6             | 60.5              | 33.3               | 88.9                | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS1.5  | spiral-wound | 47.8             | 69.9              | 41.4               | 98.6                | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS2    | spiral-wound | 58.7             | 85.9              | 52.3               | 143.0               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS2.5  | spiral-wound | 69.9             | 98.6              | 63.5               | 165.1               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS3    | spiral-wound | 92.2             | 120.7             | 78.7               | 174.8               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS4    | spiral-wound | 117.6            | 149.4             | 97.8               | 209.6               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS5    | spiral-wound | 143.0            | 177.8             | 124.5              | 254.0               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS6    | spiral-wound | 171.5            | 209.6             | 147.3              | 282.7               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS8    | spiral-wound | 215.9            | 257.3             | 196.9              | 352.6               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS10   | spiral-wound | 266.7            | 311.2             | 246.1              | 435.1               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS12   | spiral-wound | 323.9            | 368.3             | 292.1              | 520.7               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS14   | spiral-wound | 362.0            | 400.1             | 320.8              | 577.9               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS16   | spiral-wound | 406.4            | 457.2             | 374.7              | 641.4               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS18   | spiral-wound | 463.6            | 520.7             | 425.5              | 704.9               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS20   | spiral-wound | 514.4            | 571.5             | 476.3              | 755.7               | 4.5          | F4         |
ASME-B16.5 | 1500   | NPS24   | spiral-wound | 616.0            | 679.5             | 577.9              | 901.7               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS0.5  | spiral-wound | 19.1             | 31.8              | 14.2               | 69.9                | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS0.75 | spiral-wound | 25.4             | 39.6              | 20.6               | 76.2                | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS1    | spiral-wound | 31.8             | 47.8              | 26.9               | 85.9                | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS1.25 | spiral-wound | 39.6             | 60.5              | 33.3               | 104.9               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS1.5  | spiral-wound | 47.8             | 69.9              | 41.4               | 117.6               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS2    | spiral-wound | 58.7             | 85.9              | 52.3               | 146.1               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS2.5  | spiral-wound | 69.9             | 98.6              | 63.5               | 168.4               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS3    | spiral-wound | 92.2             | 120.7             | 78.7               | 196.9               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS4    | spiral-wound | 117.6            | 149.4             | 97.8               | 235.0               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS5    | spiral-wound | 143.0            | 177.8             | 124.5              | 279.4               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS6    | spiral-wound | 171.5            | 209.6             | 147.3              | 317.5               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS8    | spiral-wound | 215.9            | 257.3             | 196.9              | 387.4               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS10   | spiral-wound | 270.0            | 311.2             | 246.1              | 476.3               | 4.5          | F4         |
ASME-B16.5 | 2500   | NPS12   | spiral-wound | 317.5            | 368.3             | 292.1              | 549.4               | 4.5          | F4         |
`,
};
