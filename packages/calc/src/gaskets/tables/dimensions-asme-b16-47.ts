import type { SourcedTable } from '../../tables/sourced-table.ts';

/** Gasket dimensions by flange. */
export const GASKET_DIMENSIONS_ASME_B16_47: SourcedTable = {
  standard: 'ASME B16.20, ASME B16.21',
  edition: 'not stated by the sources',
  table: 'gasket dimensions by flange',
  held: 'public files and rules',
  confidence: 'B16.20 92-97 %, B16.21 96 %',
  statement: 'transcribed from public reproductions of ASME B16.20/B16.21; confirm against your edition',
  text: `
standard      | rating | size  | form         | contactInside_mm | contactOutside_mm | innerRingInside_mm | outerRingOutside_mm | thickness_mm | basis   | note
ASME-B16.47-A | 150    | NPS26 | spiral-wound | 673.1            | 704.9             | 654.1              | 774.7               | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS26 | flat-ring    | 660              | 749.3             |                    | 775                 | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS28 | spiral-wound | 723.9            | 755.7             | 704.9              | 831.9               | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS28 | flat-ring    | 711              | 800.1             |                    | 832                 | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS30 | spiral-wound | 774.7            | 806.5             | 755.7              | 882.7               | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS30 | flat-ring    | 762              | 857.2             |                    | 883                 | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS32 | spiral-wound | 825.5            | 860.6             | 806.5              | 939.8               | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS32 | flat-ring    | 813              | 914.4             |                    | 940                 | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS34 | spiral-wound | 876.3            | 911.4             | 857.3              | 990.6               | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS34 | flat-ring    | 864              | 965.2             |                    | 991                 | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS36 | spiral-wound | 927.1            | 968.5             | 908.1              | 1047.8              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS36 | flat-ring    | 914              | 1022.3            |                    | 1048                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS38 | spiral-wound | 977.9            | 1019.3            | 958.9              | 1111.3              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS38 | flat-ring    | 965              | 1073.1            |                    | 1111                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS40 | spiral-wound | 1028.7           | 1070.1            | 1009.7             | 1162.1              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS40 | flat-ring    | 1016             | 1124.0            |                    | 1162                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS42 | spiral-wound | 1079.5           | 1124.0            | 1060.5             | 1219.2              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS42 | flat-ring    | 1067             | 1193.8            |                    | 1219                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS44 | spiral-wound | 1130.3           | 1178.1            | 1111.3             | 1276.4              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS44 | flat-ring    | 1118             | 1244.6            |                    | 1276                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS46 | spiral-wound | 1181.1           | 1228.9            | 1162.1             | 1327.2              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS46 | flat-ring    | 1168             | 1295.4            |                    | 1327                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS48 | spiral-wound | 1231.9           | 1279.7            | 1212.9             | 1384.3              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS48 | flat-ring    | 1219             | 1358.9            |                    | 1384                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS50 | spiral-wound | 1282.7           | 1333.5            | 1263.7             | 1435.1              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS50 | flat-ring    | 1270             | 1409.7            |                    | 1435                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS52 | spiral-wound | 1333.5           | 1384.3            | 1314.5             | 1492.3              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS52 | flat-ring    | 1321             | 1460.5            |                    | 1492                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS54 | spiral-wound | 1384.3           | 1435.1            | 1358.9             | 1549.4              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS54 | flat-ring    | 1372             | 1511.3            |                    | 1549                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS56 | spiral-wound | 1435.1           | 1485.9            | 1409.7             | 1606.6              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS56 | flat-ring    | 1422             | 1574.8            |                    | 1607                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS58 | spiral-wound | 1485.9           | 1536.7            | 1460.5             | 1663.7              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS58 | flat-ring    | 1473             | 1625.6            |                    | 1664                | 1.6          | F4+rule |
ASME-B16.47-A | 150    | NPS60 | spiral-wound | 1536.7           | 1587.5            | 1511.3             | 1714.5              | 4.5          | F4      |
ASME-B16.47-A | 150    | NPS60 | flat-ring    | 1524             | 1676.4            |                    | 1715                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS26 | spiral-wound | 685.8            | 736.6             |                    | 835.2               | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS26 | flat-ring    | 660              | 749.3             |                    | 835                 | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS28 | spiral-wound | 736.6            | 787.4             |                    | 898.7               | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS28 | flat-ring    | 711              | 800.1             |                    | 899                 | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS30 | spiral-wound | 793.8            | 844.6             |                    | 952.5               | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS30 | flat-ring    | 762              | 857.2             |                    | 953                 | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS32 | spiral-wound | 850.9            | 901.7             |                    | 1006.6              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS32 | flat-ring    | 813              | 914.4             |                    | 1006                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS34 | spiral-wound | 901.7            | 952.5             |                    | 1057.4              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS34 | flat-ring    | 864              | 965.2             |                    | 1057                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS36 | spiral-wound | 955.8            | 1006.6            |                    | 1117.6              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS36 | flat-ring    | 914              | 1022.3            |                    | 1118                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS38 | spiral-wound | 977.9            | 1016.0            |                    | 1054.1              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B
ASME-B16.47-A | 300    | NPS38 | flat-ring    | 965              | 1028.7            |                    | 1054                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS40 | spiral-wound | 1022.4           | 1070.1            |                    | 1114.6              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B
ASME-B16.47-A | 300    | NPS40 | flat-ring    | 1016             | 1085.8            |                    | 1114                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS42 | spiral-wound | 1073.2           | 1120.9            |                    | 1165.4              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B
ASME-B16.47-A | 300    | NPS42 | flat-ring    | 1067             | 1136.6            |                    | 1165                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS44 | spiral-wound | 1130.3           | 1181.1            |                    | 1219.2              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS44 | flat-ring    | 1118             | 1193.8            |                    | 1219                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS46 | spiral-wound | 1178.1           | 1228.9            |                    | 1273.3              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B
ASME-B16.47-A | 300    | NPS46 | flat-ring    | 1168             | 1244.6            |                    | 1273                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS48 | spiral-wound | 1235.2           | 1286.0            |                    | 1324.1              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B
ASME-B16.47-A | 300    | NPS48 | flat-ring    | 1219             | 1301.8            |                    | 1324                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS50 | spiral-wound | 1295.4           | 1346.2            |                    | 1378.0              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS50 | flat-ring    | 1270             | 1358.9            |                    | 1378                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS52 | spiral-wound | 1346.2           | 1397.0            |                    | 1428.8              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS52 | flat-ring    | 1321             | 1409.7            |                    | 1429                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS54 | spiral-wound | 1403.4           | 1454.2            |                    | 1492.3              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS54 | flat-ring    | 1372             | 1466.8            |                    | 1492                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS56 | spiral-wound | 1454.2           | 1505.0            |                    | 1543.1              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B; winding equals F4 Series A Class 400
ASME-B16.47-A | 300    | NPS56 | flat-ring    | 1422             | 1517.6            |                    | 1543                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS58 | spiral-wound | 1511.3           | 1562.1            |                    | 1593.9              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B
ASME-B16.47-A | 300    | NPS58 | flat-ring    | 1473             | 1574.8            |                    | 1594                | 1.6          | F4+rule |
ASME-B16.47-A | 300    | NPS60 | spiral-wound | 1562.1           | 1612.9            |                    | 1644.7              | 4.5          | memory  | memory; the F4 table for this class is a copy of Series B
ASME-B16.47-A | 300    | NPS60 | flat-ring    | 1524             | 1625.6            |                    | 1645                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS26 | spiral-wound | 685.8            | 736.6             | 660.4              | 831.9               | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS26 | flat-ring    | 660              | 749.3             |                    | 832                 | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS28 | spiral-wound | 736.6            | 787.4             | 711.2              | 892.3               | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS28 | flat-ring    | 711              | 800.1             |                    | 892                 | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS30 | spiral-wound | 793.8            | 844.6             | 755.7              | 946.2               | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS30 | flat-ring    | 762              | 857.2             |                    | 946                 | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS32 | spiral-wound | 850.9            | 901.7             | 812.8              | 1003.3              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS32 | flat-ring    | 813              | 914.4             |                    | 1003                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS34 | spiral-wound | 901.7            | 952.5             | 863.6              | 1054.1              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS34 | flat-ring    | 864              | 965.2             |                    | 1054                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS36 | spiral-wound | 955.8            | 1006.6            | 917.7              | 1117.6              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS36 | flat-ring    | 914              | 1022.3            |                    | 1118                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS38 | spiral-wound | 971.6            | 1022.4            | 952.5              | 1073.2              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS38 | flat-ring    | 965              | 1035.0            |                    | 1073                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS40 | spiral-wound | 1025.7           | 1076.5            | 1000.3             | 1127.3              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS40 | flat-ring    | 1016             | 1092.2            |                    | 1127                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS42 | spiral-wound | 1076.5           | 1127.3            | 1051.1             | 1178.1              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS42 | flat-ring    | 1067             | 1143.0            |                    | 1178                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS44 | spiral-wound | 1130.3           | 1181.1            | 1104.9             | 1231.9              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS44 | flat-ring    | 1118             | 1200.1            |                    | 1232                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS46 | spiral-wound | 1193.8           | 1244.6            | 1168.4             | 1289.1              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS46 | flat-ring    | 1168             | 1257.3            |                    | 1289                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS48 | spiral-wound | 1244.6           | 1295.4            | 1206.5             | 1346.2              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS48 | flat-ring    | 1219             | 1308.1            |                    | 1346                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS50 | spiral-wound | 1295.4           | 1346.2            | 1257.3             | 1403.4              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS50 | flat-ring    | 1270             | 1362.1            |                    | 1403                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS52 | spiral-wound | 1346.2           | 1397.0            | 1308.1             | 1454.2              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS52 | flat-ring    | 1321             | 1412.9            |                    | 1454                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS54 | spiral-wound | 1403.4           | 1454.2            | 1352.6             | 1517.7              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS54 | flat-ring    | 1372             | 1470.0            |                    | 1518                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS56 | spiral-wound | 1454.2           | 1505.0            | 1403.4             | 1568.5              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS56 | flat-ring    | 1422             | 1527.2            |                    | 1568                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS58 | spiral-wound | 1505.0           | 1555.8            | 1454.2             | 1619.3              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS58 | flat-ring    | 1473             | 1578.0            |                    | 1619                | 1.6          | F4+rule |
ASME-B16.47-A | 400    | NPS60 | spiral-wound | 1568.5           | 1619.3            | 1517.7             | 1682.8              | 4.5          | F4      |
ASME-B16.47-A | 400    | NPS60 | flat-ring    | 1524             | 1635.1            |                    | 1683                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS26 | spiral-wound | 685.8            | 736.6             | 647.7              | 866.9               | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS26 | flat-ring    | 660              | 749.3             |                    | 867                 | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS28 | spiral-wound | 736.6            | 787.4             | 698.5              | 914.4               | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS28 | flat-ring    | 711              | 800.1             |                    | 914                 | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS30 | spiral-wound | 793.8            | 844.6             | 755.7              | 971.6               | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS30 | flat-ring    | 762              | 857.2             |                    | 972                 | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS32 | spiral-wound | 850.9            | 901.7             | 812.8              | 1022.4              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS32 | flat-ring    | 813              | 914.4             |                    | 1022                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS34 | spiral-wound | 901.7            | 952.5             | 863.6              | 1073.2              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS34 | flat-ring    | 864              | 965.2             |                    | 1073                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS36 | spiral-wound | 955.8            | 1006.6            | 917.7              | 1130.3              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS36 | flat-ring    | 914              | 1022.3            |                    | 1130                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS38 | spiral-wound | 990.6            | 1041.4            | 952.5              | 1104.9              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS38 | flat-ring    | 965              | 1054.1            |                    | 1105                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS40 | spiral-wound | 1047.8           | 1098.6            | 1009.7             | 1155.7              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS40 | flat-ring    | 1016             | 1111.2            |                    | 1156                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS42 | spiral-wound | 1104.9           | 1155.7            | 1066.8             | 1219.2              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS42 | flat-ring    | 1067             | 1168.4            |                    | 1219                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS44 | spiral-wound | 1162.1           | 1212.9            | 1111.3             | 1270.0              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS44 | flat-ring    | 1118             | 1225.5            |                    | 1270                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS46 | spiral-wound | 1212.9           | 1263.7            | 1162.1             | 1327.2              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS46 | flat-ring    | 1168             | 1276.3            |                    | 1327                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS48 | spiral-wound | 1270.0           | 1320.8            | 1219.2             | 1390.7              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS48 | flat-ring    | 1219             | 1333.5            |                    | 1391                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS50 | spiral-wound | 1320.8           | 1371.6            | 1270.0             | 1447.8              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS50 | flat-ring    | 1270             | 1384.3            |                    | 1448                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS52 | spiral-wound | 1371.6           | 1422.4            | 1320.8             | 1498.6              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS52 | flat-ring    | 1321             | 1435.1            |                    | 1499                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS54 | spiral-wound | 1428.8           | 1479.6            | 1378.0             | 1555.8              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS54 | flat-ring    | 1372             | 1492.2            |                    | 1556                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS56 | spiral-wound | 1479.6           | 1530.4            | 1428.8             | 1612.9              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS56 | flat-ring    | 1422             | 1543.0            |                    | 1613                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS58 | spiral-wound | 1536.7           | 1587.5            | 1473.2             | 1663.7              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS58 | flat-ring    | 1473             | 1600.2            |                    | 1664                | 1.6          | F4+rule |
ASME-B16.47-A | 600    | NPS60 | spiral-wound | 1593.9           | 1644.7            | 1530.4             | 1733.6              | 4.5          | F4      |
ASME-B16.47-A | 600    | NPS60 | flat-ring    | 1524             | 1657.3            |                    | 1721                | 1.6          | F4+rule | rule outside 1734
ASME-B16.47-A | 900    | NPS26 | spiral-wound | 685.8            | 736.6             | 660.4              | 882.7               | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS28 | spiral-wound | 736.6            | 787.4             | 711.2              | 946.2               | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS30 | spiral-wound | 793.8            | 844.6             | 768.4              | 1009.7              | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS32 | spiral-wound | 850.9            | 901.7             | 812.8              | 1073.2              | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS34 | spiral-wound | 901.7            | 952.5             | 863.6              | 1136.7              | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS36 | spiral-wound | 958.9            | 1009.7            | 920.8              | 1200.2              | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS38 | spiral-wound | 1035.1           | 1085.9            | 1009.7             | 1200.2              | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS40 | spiral-wound | 1098.6           | 1149.4            | 1060.5             | 1251.0              | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS42 | spiral-wound | 1149.4           | 1200.2            | 1111.3             | 1301.8              | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS44 | spiral-wound | 1206.5           | 1257.3            | 1155.7             | 1368.6              | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS46 | spiral-wound | 1270.0           | 1320.8            | 1219.2             | 1435.1              | 4.5          | F4      |
ASME-B16.47-A | 900    | NPS48 | spiral-wound | 1320.8           | 1371.6            | 1270.0             | 1485.9              | 4.5          | F4      |
ASME-B16.47-B | 75     | NPS26 | flat-ring    | 660.0            | 704.8             |                    | 708.0               | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS28 | flat-ring    | 711.0            | 755.6             |                    | 759.0               | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS30 | flat-ring    | 762.0            | 806.4             |                    | 810.0               | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS32 | flat-ring    | 813.0            | 857.2             |                    | 860.0               | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS34 | flat-ring    | 864.0            | 908.0             |                    | 911.0               | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS36 | flat-ring    | 914.0            | 965.2             |                    | 973.0               | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS38 | flat-ring    | 965.0            | 1016.0            |                    | 1024.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS40 | flat-ring    | 1016.0           | 1066.8            |                    | 1075.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS42 | flat-ring    | 1067.0           | 1117.6            |                    | 1126.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS44 | flat-ring    | 1118.0           | 1174.8            |                    | 1181.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS46 | flat-ring    | 1168.0           | 1225.5            |                    | 1232.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS48 | flat-ring    | 1219.0           | 1276.3            |                    | 1283.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS50 | flat-ring    | 1270.0           | 1327.1            |                    | 1334.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS52 | flat-ring    | 1321.0           | 1377.9            |                    | 1387.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS54 | flat-ring    | 1372.0           | 1428.8            |                    | 1438.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS56 | flat-ring    | 1422.0           | 1485.9            |                    | 1495.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS58 | flat-ring    | 1473.0           | 1536.7            |                    | 1546.0              | 1.6          | F3+rule |
ASME-B16.47-B | 75     | NPS60 | flat-ring    | 1524.0           | 1587.5            |                    | 1597.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS26 | spiral-wound | 673.1            | 698.5             | 654.1              | 725.4               | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS26 | flat-ring    | 660.0            | 711.2             |                    | 725.0               | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS28 | spiral-wound | 723.9            | 749.3             | 704.9              | 776.2               | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS28 | flat-ring    | 711.0            | 762.0             |                    | 776.0               | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS30 | spiral-wound | 774.7            | 800.1             | 755.7              | 827.0               | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS30 | flat-ring    | 762.0            | 812.8             |                    | 827.0               | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS32 | spiral-wound | 825.5            | 850.9             | 806.5              | 881.1               | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS32 | flat-ring    | 813.0            | 863.6             |                    | 881.0               | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS34 | spiral-wound | 876.3            | 908.1             | 857.3              | 935.0               | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS34 | flat-ring    | 864.0            | 920.8             |                    | 935.0               | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS36 | spiral-wound | 927.1            | 958.9             | 908.1              | 987.6               | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS36 | flat-ring    | 914.0            | 971.5             |                    | 987.0               | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS38 | spiral-wound | 974.9            | 1009.7            | 958.9              | 1044.7              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS38 | flat-ring    | 965.0            | 1022.3            |                    | 1045.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS40 | spiral-wound | 1022.4           | 1063.8            | 1009.7             | 1095.5              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS40 | flat-ring    | 1016.0           | 1079.5            |                    | 1095.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS42 | spiral-wound | 1079.5           | 1114.6            | 1060.5             | 1146.3              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS42 | flat-ring    | 1067.0           | 1130.3            |                    | 1146.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS44 | spiral-wound | 1124.0           | 1165.4            | 1111.3             | 1197.1              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS44 | flat-ring    | 1118.0           | 1181.1            |                    | 1197.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS46 | spiral-wound | 1181.1           | 1224.0            | 1162.1             | 1255.8              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS46 | flat-ring    | 1168.0           | 1235.1            |                    | 1256.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS48 | spiral-wound | 1231.9           | 1270.0            | 1212.9             | 1306.6              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS48 | flat-ring    | 1219.0           | 1289.0            |                    | 1307.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS50 | spiral-wound | 1282.7           | 1325.6            | 1263.7             | 1357.4              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS50 | flat-ring    | 1270.0           | 1339.8            |                    | 1357.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS52 | spiral-wound | 1333.5           | 1376.4            | 1314.5             | 1408.2              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS52 | flat-ring    | 1321.0           | 1390.6            |                    | 1408.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS54 | spiral-wound | 1384.3           | 1422.4            | 1365.3             | 1463.8              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS54 | flat-ring    | 1372.0           | 1441.4            |                    | 1464.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS56 | spiral-wound | 1444.8           | 1478.0            | 1422.4             | 1514.6              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS56 | flat-ring    | 1422.0           | 1492.2            |                    | 1514.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS58 | spiral-wound | 1500.0           | 1528.8            | 1478.0             | 1579.6              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS58 | flat-ring    | 1473.0           | 1543.0            |                    | 1580.0              | 1.6          | F3+rule |
ASME-B16.47-B | 150    | NPS60 | spiral-wound | 1557.3           | 1586.0            | 1535.2             | 1630.4              | 4.5          | F4      |
ASME-B16.47-B | 150    | NPS60 | flat-ring    | 1524.0           | 1600.2            |                    | 1630.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS26 | spiral-wound | 673.1            | 711.2             | 654.1              | 771.7               | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS26 | flat-ring    | 660.0            | 736.6             |                    | 772.0               | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS28 | spiral-wound | 723.9            | 762.0             | 704.9              | 825.5               | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS28 | flat-ring    | 711.0            | 787.4             |                    | 826.0               | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS30 | spiral-wound | 774.7            | 812.8             | 755.7              | 886.0               | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS30 | flat-ring    | 762.0            | 844.5             |                    | 886.0               | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS32 | spiral-wound | 825.5            | 863.6             | 806.5              | 939.8               | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS32 | flat-ring    | 813.0            | 901.7             |                    | 940.0               | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS34 | spiral-wound | 876.3            | 914.4             | 857.3              | 993.9               | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS34 | flat-ring    | 864.0            | 952.5             |                    | 994.0               | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS36 | spiral-wound | 927.1            | 965.2             | 908.1              | 1047.8              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS36 | flat-ring    | 914.0            | 1009.6            |                    | 1048.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS38 | spiral-wound | 1009.7           | 1047.8            | 971.6              | 1098.6              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS38 | flat-ring    | 965.0            | 1060.5            |                    | 1099.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS40 | spiral-wound | 1060.5           | 1098.6            | 1022.4             | 1149.4              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS40 | flat-ring    | 1016.0           | 1114.4            |                    | 1149.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS42 | spiral-wound | 1111.3           | 1149.4            | 1085.9             | 1200.2              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS42 | flat-ring    | 1067.0           | 1168.4            |                    | 1200.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS44 | spiral-wound | 1162.1           | 1200.2            | 1124.0             | 1251.0              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS44 | flat-ring    | 1118.0           | 1219.2            |                    | 1251.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS46 | spiral-wound | 1216.2           | 1254.3            | 1178.1             | 1317.8              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS46 | flat-ring    | 1168.0           | 1270.0            |                    | 1318.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS48 | spiral-wound | 1263.7           | 1311.4            | 1231.9             | 1368.6              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS48 | flat-ring    | 1219.0           | 1327.1            |                    | 1368.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS50 | spiral-wound | 1317.8           | 1355.9            | 1267.0             | 1419.4              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS50 | flat-ring    | 1270.0           | 1377.9            |                    | 1419.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS52 | spiral-wound | 1368.6           | 1406.7            | 1317.8             | 1470.2              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS52 | flat-ring    | 1321.0           | 1428.8            |                    | 1470.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS54 | spiral-wound | 1403.4           | 1454.2            | 1365.3             | 1530.4              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS54 | flat-ring    | 1372.0           | 1479.5            |                    | 1530.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS56 | spiral-wound | 1479.6           | 1524.0            | 1428.8             | 1593.9              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS56 | flat-ring    | 1422.0           | 1536.7            |                    | 1594.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS58 | spiral-wound | 1535.2           | 1573.3            | 1484.4             | 1655.8              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS58 | flat-ring    | 1473.0           | 1593.8            |                    | 1656.0              | 1.6          | F3+rule |
ASME-B16.47-B | 300    | NPS60 | spiral-wound | 1589.0           | 1630.4            | 1557.3             | 1706.6              | 4.5          | F4      |
ASME-B16.47-B | 300    | NPS60 | flat-ring    | 1524.0           | 1651.0            |                    | 1705.0              | 1.6          | F3+rule |
ASME-B16.47-B | 400    | NPS26 | spiral-wound | 666.8            | 698.5             | 654.1              | 746.3               | 4.5          | F4      |
ASME-B16.47-B | 400    | NPS26 | flat-ring    | 660.0            | 711.2             |                    | 746.0               | 1.6          | F3+rule |
ASME-B16.47-B | 400    | NPS28 | spiral-wound | 714.5            | 749.3             | 701.8              | 800.1               | 4.5          | F4      |
ASME-B16.47-B | 400    | NPS28 | flat-ring    | 711.0            | 762.0             |                    | 800.0               | 1.6          | F3+rule |
ASME-B16.47-B | 400    | NPS30 | spiral-wound | 765.3            | 806.5             | 752.6              | 857.3               | 4.5          | F4      |
ASME-B16.47-B | 400    | NPS30 | flat-ring    | 762.0            | 819.1             |                    | 857.0               | 1.6          | F3+rule |
ASME-B16.47-B | 400    | NPS32 | spiral-wound | 812.8            | 860.6             | 800.1              | 911.4               | 4.5          | F4      | centring ring 911.4 against bolt circle minus bolt 904.8
ASME-B16.47-B | 400    | NPS32 | flat-ring    | 813.0            | 873.1             |                    | 911.0               | 1.6          | F3+rule | rule outside 905
ASME-B16.47-B | 400    | NPS34 | spiral-wound | 866.9            | 911.4             | 850.9              | 962.2               | 4.5          | F4      |
ASME-B16.47-B | 400    | NPS34 | flat-ring    | 864.0            | 927.1             |                    | 962.0               | 1.6          | F3+rule |
ASME-B16.47-B | 400    | NPS36 | spiral-wound | 917.7            | 965.2             | 898.7              | 1022.4              | 4.5          | F4      |
ASME-B16.47-B | 400    | NPS36 | flat-ring    | 914.0            | 981.1             |                    | 1022.0              | 1.6          | F3+rule |
ASME-B16.47-B | 600    | NPS26 | spiral-wound | 663.7            | 714.5             | 644.7              | 765.3               | 4.5          | F4      |
ASME-B16.47-B | 600    | NPS26 | flat-ring    | 660.0            | 727.1             |                    | 765.0               | 1.6          | F3+rule |
ASME-B16.47-B | 600    | NPS28 | spiral-wound | 704.9            | 755.7             | 685.8              | 819.2               | 4.5          | F4      |
ASME-B16.47-B | 600    | NPS28 | flat-ring    | 711.0            | 784.2             |                    | 819.0               | 1.6          | F3+rule |
ASME-B16.47-B | 600    | NPS30 | spiral-wound | 778.0            | 828.8             | 752.6              | 879.6               | 4.5          | F4      |
ASME-B16.47-B | 600    | NPS30 | flat-ring    | 762.0            | 841.4             |                    | 879.0               | 1.6          | F3+rule |
ASME-B16.47-B | 600    | NPS32 | spiral-wound | 831.9            | 882.7             | 793.8              | 933.5               | 4.5          | F4      |
ASME-B16.47-B | 600    | NPS32 | flat-ring    | 813.0            | 895.3             |                    | 933.0               | 1.6          | F3+rule |
ASME-B16.47-B | 600    | NPS34 | spiral-wound | 889.0            | 939.8             | 850.9              | 997.0               | 4.5          | F4      |
ASME-B16.47-B | 600    | NPS34 | flat-ring    | 864.0            | 952.5             |                    | 997.0               | 1.6          | F3+rule |
ASME-B16.47-B | 600    | NPS36 | spiral-wound | 939.8            | 990.6             | 901.7              | 1047.8              | 4.5          | F4      |
ASME-B16.47-B | 600    | NPS36 | flat-ring    | 914.0            | 1009.6            |                    | 1048.0              | 1.6          | F3+rule |
ASME-B16.47-B | 900    | NPS26 | spiral-wound | 692.2            | 749.3             | 666.8              | 838.2               | 4.5          | F4      |
ASME-B16.47-B | 900    | NPS28 | spiral-wound | 743.0            | 800.1             | 717.6              | 901.7               | 4.5          | F4      |
ASME-B16.47-B | 900    | NPS30 | spiral-wound | 806.5            | 857.3             | 781.1              | 958.9               | 4.5          | F4      |
ASME-B16.47-B | 900    | NPS32 | spiral-wound | 863.6            | 914.4             | 838.2              | 1016.0              | 4.5          | F4      |
ASME-B16.47-B | 900    | NPS34 | spiral-wound | 920.8            | 971.6             | 895.4              | 1073.2              | 4.5          | F4      |
ASME-B16.47-B | 900    | NPS36 | spiral-wound | 946.2            | 997.0             | 920.8              | 1124.0              | 4.5          | F4      |
`,
};
