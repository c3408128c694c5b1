import type { MissingDatum, UncheckedLimit } from '@seatwell/workflow';

/** What a target assumes of its bolts, and the limits that its window holds or does not. */
export const targetLimits = {
  notChecked: 'Not checked',
  item: '{limit} (missing: {missing})',
  coated: 'coated: {coating}',
  bare: 'bare',
  washers: { 0: 'no washers', 1: 'one washer a bolt', 2: 'two washers a bolt' },
  elongation: 'Elongation',
  elongationLine: '{mm} mm ({in} in) over {length} mm between mid-nuts, modulus {GPa} GPa',
  limit: {
    'gasket-thermal-loss': 'bolts hotter than flanges',
    'bolt-thermal-gain': 'bolt, flanges hotter',
    'gasket-thermal-gain': 'gasket, flanges hotter',
    'flange-rotation': 'flange rotation',
    'flange-rigidity': 'flange rigidity',
    'flange-stress-assembly': 'flange stresses at assembly',
    'flange-stress-operating': 'flange stresses in operation',
    'flange-stress-test': 'flange stresses at the test',
  },
  unchecked: {
    'coating-temperature': 'temperature of the coating',
    'external-load': 'external pull and moment',
    'flange-rotation': 'flange rotation',
    'flange-strength': 'flange strength',
    'gasket-test': 'gasket at test pressure',
    'nut-bearing': 'bearing under the nut',
    'pass-partition-ribs': 'pass-partition ribs of the gasket',
    thermal: 'bolts and flanges at different temperatures',
  } satisfies Record<UncheckedLimit, string>,
  missing: {
    'bolt-material': 'modulus and expansion of the bolts (procedure)',
    'clamped-thickness': 'thickness of every clamped part (register)',
    coating: 'coating (procedure)',
    'external-load': 'pull and moment (register)',
    'flange-strength-data': 'allowable stresses or highest bolt stress of the flange (register)',
    'gasket-rotation-limit': 'rotation that the gasket bears (gasket data)',
    'rib-area': 'area of the ribs (register)',
    temperatures: 'temperatures of bolts and flanges (register)',
    'test-pressure': 'test pressure (register)',
    washers: 'washers (procedure)',
  } satisfies Record<MissingDatum, string>,
};
