import type { SourcedTable } from '../../tables/sourced-table.ts';

/** Gasket factors m and y of ASME VIII-1 Table 2-5.1. */
export const ASME_VIII_GASKET_FACTORS: SourcedTable = {
  standard: 'ASME BPVC VIII-1 Appendix 2',
  edition: '2010 and later',
  table: 'Table 2-5.1',
  held: 'handbook reproductions and memory; the code calls the values suggestions',
  confidence: '98 %; asbestos-era rows 93 %; sketches 4 and 5 90 %',
  statement: 'transcribed from public reproductions of ASME BPVC Section VIII Division 1; confirm against your edition',
  text: `
family           | wording                                                     | material                        | m    | y_psi | y_MPa | sketches            | column
elastomer        | self-energizing (O-ring, metallic, elastomer, self-sealing) |                                 | 0    | 0     | 0.0   |                     |
elastomer        | elastomer without fabric                                    | below 75A Shore                 | 0.5  | 0     | 0.0   | 1a 1b 1c 1d 4 5     | II
elastomer        | elastomer without fabric                                    | 75A Shore or higher             | 1.0  | 200   | 1.4   | 1a 1b 1c 1d 4 5     | II
fibre-sheet      | sheet with suitable binder (code text: asbestos)            | 1/8 in thick                    | 2.0  | 1600  | 11.0  | 1a 1b 1c 1d 4 5     | II
fibre-sheet      | sheet with suitable binder (code text: asbestos)            | 1/16 in thick                   | 2.75 | 3700  | 25.5  | 1a 1b 1c 1d 4 5     | II
fibre-sheet      | sheet with suitable binder (code text: asbestos)            | 1/32 in thick                   | 3.5  | 6500  | 44.8  | 1a 1b 1c 1d 4 5     | II
elastomer        | elastomer with cotton fabric insertion                      |                                 | 1.25 | 400   | 2.8   | 1a 1b 1c 1d 4 5     | II
elastomer        | elastomer with asbestos fabric insertion                    | 3-ply                           | 2.25 | 2200  | 15.2  | 1a 1b 1c 1d 4 5     | II
elastomer        | elastomer with asbestos fabric insertion                    | 2-ply                           | 2.5  | 2900  | 20.0  | 1a 1b 1c 1d 4 5     | II
elastomer        | elastomer with asbestos fabric insertion                    | 1-ply                           | 2.75 | 3700  | 25.5  | 1a 1b 1c 1d 4 5     | II
fibre-sheet      | vegetable fiber                                             |                                 | 1.75 | 1100  | 7.6   | 1a 1b 1c 1d 4 5     | II
spiral-wound     | spiral-wound metal, filled                                  | carbon steel                    | 2.5  | 10000 | 68.9  | 1a 1b               | II
spiral-wound     | spiral-wound metal, filled                                  | stainless, Monel, nickel alloys | 3.0  | 10000 | 68.9  | 1a 1b               | II
corrugated-metal | corrugated metal with filler, or corrugated metal jacketed  | soft aluminum                   | 2.5  | 2900  | 20.0  | 1a 1b               | II
corrugated-metal | corrugated metal with filler, or corrugated metal jacketed  | soft copper or brass            | 2.75 | 3700  | 25.5  | 1a 1b               | II
corrugated-metal | corrugated metal with filler, or corrugated metal jacketed  | iron or soft steel              | 3    | 4500  | 31.0  | 1a 1b               | II
corrugated-metal | corrugated metal with filler, or corrugated metal jacketed  | Monel or 4-6 % chrome           | 3.25 | 5500  | 37.9  | 1a 1b               | II
corrugated-metal | corrugated metal with filler, or corrugated metal jacketed  | stainless and nickel alloys     | 3.5  | 6500  | 44.8  | 1a 1b               | II
corrugated-metal | corrugated metal                                            | soft aluminum                   | 2.75 | 3700  | 25.5  | 1a 1b 1c 1d         | II
corrugated-metal | corrugated metal                                            | soft copper or brass            | 3    | 4500  | 31.0  | 1a 1b 1c 1d         | II
corrugated-metal | corrugated metal                                            | iron or soft steel              | 3.25 | 5500  | 37.9  | 1a 1b 1c 1d         | II
corrugated-metal | corrugated metal                                            | Monel or 4-6 % chrome           | 3.5  | 6500  | 44.8  | 1a 1b 1c 1d         | II
corrugated-metal | corrugated metal                                            | stainless and nickel alloys     | 3.75 | 7600  | 52.4  | 1a 1b 1c 1d         | II
jacketed         | flat metal jacketed with filler                             | soft aluminum                   | 3.25 | 5500  | 37.9  | 1a 1b 1c 1d 2       | II
jacketed         | flat metal jacketed with filler                             | soft copper or brass            | 3.5  | 6500  | 44.8  | 1a 1b 1c 1d 2       | II
jacketed         | flat metal jacketed with filler                             | iron or soft steel              | 3.75 | 7600  | 52.4  | 1a 1b 1c 1d 2       | II
jacketed         | flat metal jacketed with filler                             | Monel                           | 3.5  | 8000  | 55.2  | 1a 1b 1c 1d 2       | II
jacketed         | flat metal jacketed with filler                             | 4-6 % chrome                    | 3.75 | 9000  | 62.1  | 1a 1b 1c 1d 2       | II
jacketed         | flat metal jacketed with filler                             | stainless and nickel alloys     | 3.75 | 9000  | 62.1  | 1a 1b 1c 1d 2       | II
grooved-metal    | grooved metal                                               | soft aluminum                   | 3.25 | 5500  | 37.9  | 1a 1b 1c 1d 2 3     | II
grooved-metal    | grooved metal                                               | soft copper or brass            | 3.5  | 6500  | 44.8  | 1a 1b 1c 1d 2 3     | II
grooved-metal    | grooved metal                                               | iron or soft steel              | 3.75 | 7600  | 52.4  | 1a 1b 1c 1d 2 3     | II
grooved-metal    | grooved metal                                               | Monel or 4-6 % chrome           | 3.75 | 9000  | 62.1  | 1a 1b 1c 1d 2 3     | II
grooved-metal    | grooved metal                                               | stainless and nickel alloys     | 4.25 | 10100 | 69.6  | 1a 1b 1c 1d 2 3     | II
flat-metal       | solid flat metal                                            | soft aluminum                   | 4    | 8800  | 60.7  | 1a 1b 1c 1d 2 3 4 5 | I
flat-metal       | solid flat metal                                            | soft copper or brass            | 4.75 | 13000 | 89.6  | 1a 1b 1c 1d 2 3 4 5 | I
flat-metal       | solid flat metal                                            | iron or soft steel              | 5.5  | 18000 | 124.1 | 1a 1b 1c 1d 2 3 4 5 | I
flat-metal       | solid flat metal                                            | Monel or 4-6 % chrome           | 6    | 21800 | 150.3 | 1a 1b 1c 1d 2 3 4 5 | I
flat-metal       | solid flat metal                                            | stainless and nickel alloys     | 6.5  | 26000 | 179.3 | 1a 1b 1c 1d 2 3 4 5 | I
ring-joint       | ring joint                                                  | iron or soft steel              | 5.5  | 18000 | 124.1 | 6                   | I
ring-joint       | ring joint                                                  | Monel or 4-6 % chrome           | 6    | 21800 | 150.3 | 6                   | I
ring-joint       | ring joint                                                  | stainless and nickel alloys     | 6.5  | 26000 | 179.3 | 6                   | I
`,
};
