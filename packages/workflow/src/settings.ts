import type { ShutdownSettings } from '@seatwell/contract';

/**
 * What a shutdown begins with. Alignment: ASME PCC-1, appendix E (parallelism 0.8 mm at the sealing surface with
 * at most 10 % of the load, centre-line offset 1.5 mm, rotation 3 mm; read in public pages, not in the printed
 * standard). Times and shares are common practice and for the site to set.
 */
export const DEFAULT_SETTINGS: ShutdownSettings = {
  criticalities: {
    A: {
      checkingLevel: 'every',
      witnessPoint: true,
      measuredFlatness: true,
      relaxationPass: true,
      checkerFromOtherCompany: true,
    },
    B: {
      checkingLevel: 'sample',
      witnessPoint: false,
      measuredFlatness: false,
      relaxationPass: false,
      checkerFromOtherCompany: false,
    },
    C: {
      checkingLevel: 'chargehand',
      witnessPoint: false,
      measuredFlatness: false,
      relaxationPass: false,
      checkerFromOtherCompany: false,
    },
  },
  severities: {},
  sampleShare: 0.1,
  faceAcceptanceLapses_h: 24,
  provisionalToolCleared_h: 24,
  relaxationPassAfter_h: 4,
  relaxationPassOverdue_h: 24,
  leastSecondsPerBolt: 10,
  alignment: {
    parallelism_mm: 0.8,
    offset_mm: 1.5,
    rotation_mm: 3,
    pullIn_percent: 10,
    qcBand_factor: 1.5,
    source: 'ASME PCC-1, appendix E (read in public pages); band factor: common practice',
  },
  largeFlangeFrom_mm: 600,
  leastMetalTemperature_C: 5,
};
