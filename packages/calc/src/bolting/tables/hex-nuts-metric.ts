import type { SourcedTable } from '../../tables/sourced-table.ts';

/** Metric hex nuts. */
export const HEX_NUTS_METRIC: SourcedTable = {
  standard: 'ISO 4032; ASME B18.2.4.6M',
  edition: 'ISO 4032:2012',
  table: 'hex nuts style 1; heavy hex metric',
  held: 'a CAD part library; heavy hex from memory',
  confidence: '99 %; heavy hex from memory',
  statement: 'transcribed from public reproductions of ISO 4032; confirm against your edition',
  text: `
thread | acrossFlats_mm | height_mm | heavyAcrossFlats_mm | basis
M10    | 16             | 8.4       |                     | ISO 4032: CAD part library (F2)
M12    | 18             | 10.8      | 21                  | ISO 4032: CAD part library (F2); heavy hex: memory only
M14    |                |           | 24                  | ; heavy hex: memory only
M16    | 24             | 14.8      | 27                  | ISO 4032: CAD part library (F2); heavy hex: memory only
M20    | 30             | 18        | 34                  | ISO 4032: CAD part library (F2); heavy hex: memory only
M22    |                |           | 36                  | ; heavy hex: memory only
M24    | 36             | 21.5      | 41                  | ISO 4032: CAD part library (F2); heavy hex: memory only
M27    | 41             | 23.8      | 46                  | ISO 4032: CAD part library (F2); heavy hex: memory only
M30    | 46             | 25.6      | 50                  | ISO 4032: CAD part library (F2); heavy hex: memory only
M33    | 50             | 28.7      |                     | ISO 4032: CAD part library (F2)
M36    | 55             | 31        | 60                  | ISO 4032: CAD part library (F2); heavy hex: memory only
M39    | 60             | 33.4      |                     | ISO 4032: CAD part library (F2)
M42    | 65             | 34        | 70                  | ISO 4032: CAD part library (F2); heavy hex: memory only
M45    | 70             | 36        |                     | ISO 4032: CAD part library (F2)
M48    | 75             | 38        | 80                  | ISO 4032: CAD part library (F2); heavy hex: memory only
M52    | 80             | 42        |                     | ISO 4032: CAD part library (F2)
M56    | 85             | 45        | 90                  | ISO 4032: CAD part library (F2); heavy hex: memory only
M64    | 95             | 51        | 100                 | ISO 4032: CAD part library (F2); heavy hex: memory only
`,
};
