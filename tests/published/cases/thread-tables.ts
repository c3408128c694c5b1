import { threadGeometry } from '@seatwell/calc';
import { type PublishedCase, printed, within } from '../published-case.ts';

// Rows of dimension tables: checked, not counted as answers.
const PCC_INCH: readonly [thread: string, tensile_in2: string, root_in2: string][] = [
  ['1/2-13 UNC', '0.1419', '0.1257'],
  ['5/8-11 UNC', '0.2260', '0.2017'],
  ['3/4-10 UNC', '0.3345', '0.3019'],
  ['7/8-9 UNC', '0.4617', '0.4192'],
  ['1-8 UNC', '0.6057', '0.5509'],
];

const PCC_METRIC: readonly [thread: string, root_mm2: string][] = [
  ['M14', '102.1'],
  ['M16', '141.0'],
  ['M20', '220.4'],
  ['M24', '317.3'],
  ['M27', '419.1'],
  ['M30x3', '535.0'],
  ['M33x3', '665.1'],
  ['M36x3', '809.3'],
  ['M42x3', '1140'],
  ['M45x3', '1327'],
  ['M48x3', '1527'],
  ['M52x3', '1817'],
  ['M56x3', '2132'],
  ['M64x3', '2837'],
  ['M70x3', '3432'],
  ['M76x3', '4083'],
  ['M82x3', '4791'],
  ['M90x3', '5822'],
  ['M95x3', '6518'],
  ['M100x3', '7253'],
];

const ISO: readonly [thread: string, area_mm2: string][] = [
  ['M6', '20.1'],
  ['M8', '36.6'],
  ['M10', '58.0'],
  ['M12', '84.3'],
  ['M14', '115'],
  ['M16', '157'],
  ['M18', '192'],
  ['M20', '245'],
  ['M22', '303'],
  ['M24', '353'],
  ['M27', '459'],
  ['M30', '561'],
  ['M33', '694'],
  ['M36', '817'],
  ['M39', '976'],
];

// UNF: pitch diameter and tensile stress area. The page's external minor diameter is that of the rounded (UNR) root,
// up to 2 % larger than the basic form used here: sources disagree on what the minor diameter is.
const UNF: readonly [thread: string, pitch_in: string, area_in2: string][] = [
  ['1/4-28 UNF', '0.2268', '0.0364'],
  ['3/8-24 UNF', '0.3479', '0.0878'],
  ['1/2-20 UNF', '0.4675', '0.1599'],
  ['5/8-18 UNF', '0.5889', '0.256'],
  ['3/4-16 UNF', '0.7094', '0.373'],
  ['7/8-14 UNF', '0.8286', '0.509'],
  ['1-12 UNF', '0.9459', '0.663'],
  ['1 1/4-12 UNF', '1.1959', '1.073'],
  ['1 1/2-12 UNF', '1.4459', '1.581'],
];

const SQUARE_INCH = 25.4 ** 2;

export const threadTableCases: readonly PublishedCase[] = [
  ...PCC_INCH.map(([thread, tensile, root]) => ({
    document: 'pcc-1-areas' as const,
    place: `inch table, ${thread}`,
    inputs: thread,
    compute: () => {
      const { tensileStressArea_mm2, rootArea_mm2 } = threadGeometry({ thread });
      return { 'tensile in²': tensileStressArea_mm2 / SQUARE_INCH, 'root in²': rootArea_mm2 / SQUARE_INCH };
    },
    printed: {
      'tensile in²': printed(tensile),
      'root in²': within(root, 0.0006, 'the table rounds down'),
    },
    dimensionRow: true as const,
  })),
  ...PCC_METRIC.map(([thread, root]) => ({
    document: 'pcc-1-areas' as const,
    place: `metric table, ${thread}`,
    inputs: thread,
    compute: () => ({ 'root mm²': threadGeometry({ thread }).pcc1RootArea_mm2 ?? Number.NaN }),
    printed: { 'root mm²': within(root, 0.0005, 'four printed digits') },
    dimensionRow: true as const,
  })),
  ...ISO.map(([thread, area]) => ({
    document: 'iso-898-1' as const,
    place: `nominal stress area, ${thread}`,
    inputs: thread,
    compute: () => ({ 'As mm²': threadGeometry({ thread }).tensileStressArea_mm2 }),
    printed: { 'As mm²': printed(area) },
    dimensionRow: true as const,
  })),
  ...UNF.map(([thread, pitch, area]) => ({
    document: 'unf-table' as const,
    place: thread,
    inputs: thread,
    compute: () => {
      const geometry = threadGeometry({ thread });
      return {
        'pitch in': geometry.pitchDiameter_mm / 25.4,
        'area in²': geometry.tensileStressArea_mm2 / SQUARE_INCH,
      };
    },
    printed: {
      'pitch in': printed(pitch),
      'area in²': printed(area),
    },
    dimensionRow: true as const,
  })),
];
