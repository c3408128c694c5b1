import type { SourcedTable } from '../../tables/sourced-table.ts';

/** Metric threads: coarse pitches and published areas (PCC-1 prints 976.6 for M39x3: its formula gives 967.8, a misprint). */
export const ISO_METRIC_THREADS: SourcedTable = {
  standard: 'ISO 261 / ISO 898-1',
  edition: 'ISO 898-1:2013',
  table: 'stress areas of ISO 898-1; root areas of ASME PCC-1 for 3 mm pitch',
  held: 'read in a handbook page; rounding above M39 from memory',
  confidence: '99 %',
  statement: 'transcribed from public reproductions of ISO 898-1 and ASME PCC-1; confirm against your edition',
  text: `
designation | series     | pitch_mm | stressAreaPublished_mm2 | basis                                                     | pcc1RootAreaPublished_mm2
M6          | coarse     | 1        | 20.1                    | ISO 898-1 table (handbook page)                           |
M8          | coarse     | 1.25     | 36.6                    | ISO 898-1 table (handbook page)                           |
M10         | coarse     | 1.5      | 58.0                    | ISO 898-1 table (handbook page)                           |
M12         | coarse     | 1.75     | 84.3                    | ISO 898-1 table (handbook page)                           |
M14         | coarse     | 2        | 115                     | ISO 898-1 table (handbook page)                           | 102.1
M16         | coarse     | 2        | 157                     | ISO 898-1 table (handbook page)                           | 141.0
M18         | coarse     | 2.5      | 192                     | ISO 898-1 table (handbook page)                           |
M20         | coarse     | 2.5      | 245                     | ISO 898-1 table (handbook page)                           | 220.4
M22         | coarse     | 2.5      | 303                     | ISO 898-1 table (handbook page)                           |
M24         | coarse     | 3        | 353                     | ISO 898-1 table (handbook page)                           | 317.3
M27         | coarse     | 3        | 459                     | ISO 898-1 table (handbook page)                           | 419.1
M30         | coarse     | 3.5      | 561                     | ISO 898-1 table (handbook page)                           |
M33         | coarse     | 3.5      | 694                     | ISO 898-1 table (handbook page)                           |
M36         | coarse     | 4        | 817                     | ISO 898-1 table (handbook page)                           |
M39         | coarse     | 4        | 976                     | ISO 898-1 table (handbook page)                           |
M42         | coarse     | 4.5      | 1120                    | memory: common handbook rounding (ISO 898-1 stops at M39) |
M45         | coarse     | 4.5      | 1310                    | memory: common handbook rounding (ISO 898-1 stops at M39) |
M48         | coarse     | 5        | 1470                    | memory: common handbook rounding (ISO 898-1 stops at M39) |
M52         | coarse     | 5        | 1760                    | memory: common handbook rounding (ISO 898-1 stops at M39) |
M56         | coarse     | 5.5      | 2030                    | memory: common handbook rounding (ISO 898-1 stops at M39) |
M60         | coarse     | 5.5      | 2360                    | memory: common handbook rounding (ISO 898-1 stops at M39) |
M64         | coarse     | 6        | 2680                    | memory: common handbook rounding (ISO 898-1 stops at M39) |
M30x3       | 3 mm pitch | 3        | 580.4                   | ASME PCC-1 Table H-1 (two stored pages)                   | 535.0
M33x3       | 3 mm pitch | 3        | 715.6                   | ASME PCC-1 Table H-1 (two stored pages)                   | 665.1
M36x3       | 3 mm pitch | 3        | 864.9                   | ASME PCC-1 Table H-1 (two stored pages)                   | 809.3
M39x3       | 3 mm pitch | 3        | 1028                    | ASME PCC-1 Table H-1 (two stored pages)                   | 976.6
M42x3       | 3 mm pitch | 3        | 1206                    | ASME PCC-1 Table H-1 (two stored pages)                   | 1140
M45x3       | 3 mm pitch | 3        | 1398                    | ASME PCC-1 Table H-1 (two stored pages)                   | 1327
M48x3       | 3 mm pitch | 3        | 1604                    | ASME PCC-1 Table H-1 (two stored pages)                   | 1527
M52x3       | 3 mm pitch | 3        | 1900                    | ASME PCC-1 Table H-1 (two stored pages)                   | 1817
M56x3       | 3 mm pitch | 3        | 2222                    | ASME PCC-1 Table H-1 (two stored pages)                   | 2132
M64x3       | 3 mm pitch | 3        | 2940                    | ASME PCC-1 Table H-1 (two stored pages)                   | 2837
M70x3       | 3 mm pitch | 3        | 3545                    | ASME PCC-1 Table H-1 (two stored pages)                   | 3432
M76x3       | 3 mm pitch | 3        | 4207                    | ASME PCC-1 Table H-1 (two stored pages)                   | 4083
M82x3       | 3 mm pitch | 3        | 4925                    | ASME PCC-1 Table H-1 (two stored pages)                   | 4791
M90x3       | 3 mm pitch | 3        | 5970                    | ASME PCC-1 Table H-1 (two stored pages)                   | 5822
M95x3       | 3 mm pitch | 3        | 6674                    | ASME PCC-1 Table H-1 (two stored pages)                   | 6518
M100x3      | 3 mm pitch | 3        | 7418                    | ASME PCC-1 Table H-1 (two stored pages)                   | 7253
`,
};
