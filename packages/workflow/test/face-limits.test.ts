import { faceLimits, GASKET_FAMILIES, judgeImperfection } from '@seatwell/calc';
import { flatnessLimit_mm, imperfectionLimit_mm } from '@seatwell/workflow';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

// The rules run on phones and carry no tables; their few limits must be those of the calculation.
describe('limits of faces in the rules', () => {
  const families = GASKET_FAMILIES.map((family) => family.code);

  it.each(families)('%s: flatness as the calculation has it', (gasketFamily) => {
    expect(flatnessLimit_mm(gasketFamily)).toBe(faceLimits({ gasketFamily, seatingWidth_mm: 20 }).flatness_mm);
  });

  it('imperfections as the calculation has them, whatever their reach', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...families),
        fc.integer({ min: 4, max: 60 }),
        fc.integer({ min: 0, max: 80 }),
        (gasketFamily, seatingWidth_mm, reach_mm) => {
          const limits = faceLimits({ gasketFamily, seatingWidth_mm });
          expect(imperfectionLimit_mm(gasketFamily, seatingWidth_mm, reach_mm)).toBe(
            judgeImperfection(limits, { reach_mm, depth_mm: 0 }).limit_mm,
          );
        },
      ),
    );
  });
});
