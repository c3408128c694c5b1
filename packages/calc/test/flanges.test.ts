import { describe, expect, it } from 'vitest';
import {
  CalcRefusal,
  FLANGE_STANDARDS,
  findFlange,
  listFlangeRatings,
  listFlangeSizes,
  parseThread,
} from '../src/index.ts';

const refusalOf = (run: () => unknown) => {
  try {
    run();
  } catch (error) {
    if (error instanceof CalcRefusal) return error.code;
    throw error;
  }
  return 'accepted';
};

// EN 1092-1 rows whose thickness no source gave.
const THICKNESS_UNKNOWN = [
  'DN700 PN6',
  'DN800 PN6',
  'DN900 PN6',
  'DN1000 PN6',
  'DN600 PN10',
  'DN700 PN10',
  'DN800 PN10',
  'DN900 PN10',
  'DN1000 PN10',
  'DN700 PN25',
  'DN800 PN25',
  'DN900 PN25',
  'DN1000 PN25',
];

const everyFlange = FLANGE_STANDARDS.flatMap((standard) =>
  listFlangeSizes(standard).flatMap((size) =>
    listFlangeRatings(standard, size).map((rating) => ({ standard, size, rating })),
  ),
);

describe('flange tables', () => {
  it('hold 441 flanges', () => {
    expect(everyFlange).toHaveLength(136 + 156 + 149);
  });

  it('have geometry that fits together', () => {
    for (const key of everyFlange) {
      if (THICKNESS_UNKNOWN.includes(`${key.size} ${key.rating}`)) {
        expect(refusalOf(() => findFlange(key))).toBe('thickness-unknown');
        continue;
      }
      const open = key.size === 'DN65' && ['PN10', 'PN16'].includes(key.rating);
      const flange = findFlange(open ? { ...key, boltCount: 8 } : key);
      const name = `${key.standard} ${key.size} ${key.rating}`;
      const bolt_mm = parseThread(flange.boltThread).nominalDiameter_mm;
      expect(flange.boltHole_mm, name).toBeGreaterThan(bolt_mm);
      expect(flange.boltHole_mm, name).toBeLessThan(bolt_mm + 7);
      expect(flange.raisedFaceDiameter_mm, name).toBeLessThan(flange.boltCircle_mm - bolt_mm / 2);
      expect(flange.boltCircle_mm + flange.boltHole_mm, name).toBeLessThan(flange.outsideDiameter_mm);
      expect(flange.boltCount % 4, name).toBe(0);
      expect(flange.source).toMatch(/confirm against your edition/);
    }
  });

  it('read keys as people write them', () => {
    const eight = findFlange({ standard: 'ASME-B16.5', size: 'NPS8', rating: '150' });
    expect(findFlange({ standard: 'asme b16.5', size: '8"', rating: 'CL150' })).toEqual(eight);
    const half = findFlange({ standard: 'ASME-B16.5', size: 'NPS1.5', rating: '300' });
    expect(findFlange({ standard: 'ASME-B16.5', size: 'NPS 1-1/2', rating: '300#' })).toEqual(half);
  });

  it('say whether the thickness includes the raised face', () => {
    expect(findFlange({ standard: 'ASME-B16.5', size: 'NPS8', rating: '150' }).thicknessIncludesRaisedFace).toBe(false);
    expect(findFlange({ standard: 'EN-1092-1', size: 'DN200', rating: 'PN16' }).thicknessIncludesRaisedFace).toBe(true);
  });
});

describe('what the tables cannot answer', () => {
  it('asks for the bolt count of DN 65 PN 10 and PN 16', () => {
    for (const rating of ['PN10', 'PN16']) {
      const key = { standard: 'EN-1092-1', size: 'DN65', rating };
      expect(refusalOf(() => findFlange(key))).toBe('bolt-count-must-be-given');
      expect(findFlange({ ...key, boltCount: 4 }).boltCount).toBe(4);
      expect(findFlange({ ...key, boltCount: 8 }).boltCount).toBe(8);
      expect(refusalOf(() => findFlange({ ...key, boltCount: 12 }))).toBe('bolt-count-not-of-this-flange');
    }
  });

  it.each([
    [{ standard: 'ASME-B16.6', size: 'NPS8', rating: '150' }, 'unknown-standard'],
    [{ standard: 'ASME-B16.5', size: 'eight', rating: '150' }, 'unknown-size'],
    [{ standard: 'ASME-B16.5', size: 'NPS8', rating: 'heavy' }, 'unknown-rating'],
    [{ standard: 'ASME-B16.5', size: 'NPS9', rating: '150' }, 'flange-not-in-table'],
    [{ standard: 'ASME-B16.5', size: 'NPS24', rating: '2500' }, 'flange-not-in-table'],
    [{ standard: 'EN-1092-1', size: 'DN600', rating: 'PN10' }, 'thickness-unknown'],
    [{ standard: 'ASME-B16.5', size: 'NPS8', rating: '150', boltCount: 12 }, 'bolt-count-not-of-this-flange'],
  ])('%j: %s', (key, code) => {
    expect(refusalOf(() => findFlange(key))).toBe(code);
  });
});

describe('the raised face of EN 1092-1 (from memory)', () => {
  it.each([
    ['DN25', 2],
    ['DN32', 2],
    ['DN40', 3],
    ['DN250', 3],
    ['DN300', 4],
    ['DN500', 4],
    ['DN600', 5],
  ])('of %s is %d mm high', (size, height_mm) => {
    expect(findFlange({ standard: 'EN-1092-1', size, rating: 'PN16' }).raisedFaceHeight_mm).toBe(height_mm);
  });
});
