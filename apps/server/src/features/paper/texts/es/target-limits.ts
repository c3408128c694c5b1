import type { SheetTexts } from '../sheet-texts.ts';

/** What a target assumes of its bolts, and the limits that its window holds or does not. */
export const targetLimits = {
  notChecked: 'No comprobado',
  item: '{limit} (falta: {missing})',
  coated: 'con recubrimiento: {coating}',
  bare: 'sin recubrimiento',
  washers: { 0: 'sin arandelas', 1: 'una arandela por perno', 2: 'dos arandelas por perno' },
  elongation: 'Elongación',
  elongationLine: '{mm} mm ({in} in) sobre {length} mm entre medias tuercas, módulo {GPa} GPa',
  limit: {
    'gasket-thermal-loss': 'pernos más calientes que las bridas',
    'bolt-thermal-gain': 'perno, bridas más calientes',
    'gasket-thermal-gain': 'empaque, bridas más calientes',
    'flange-rotation': 'rotación de la brida',
    'flange-rigidity': 'rigidez de la brida',
    'flange-stress-assembly': 'esfuerzos de la brida en el armado',
    'flange-stress-operating': 'esfuerzos de la brida en operación',
    'flange-stress-test': 'esfuerzos de la brida en la prueba',
  },
  unchecked: {
    'coating-temperature': 'temperatura del recubrimiento',
    'external-load': 'tracción y momento externos',
    'flange-rotation': 'rotación de la brida',
    'flange-strength': 'resistencia de la brida',
    'gasket-test': 'junta a la presión de prueba',
    'nut-bearing': 'apoyo bajo la tuerca',
    'pass-partition-ribs': 'nervios de partición de la junta',
    thermal: 'pernos y bridas a temperaturas distintas',
  },
  missing: {
    'bolt-material': 'módulo y dilatación de los pernos (procedimiento)',
    'clamped-thickness': 'espesor de cada pieza apretada (registro)',
    coating: 'recubrimiento (procedimiento)',
    'external-load': 'tracción y momento (registro)',
    'flange-strength-data': 'tensiones admisibles o tensión máxima de perno de la brida (registro)',
    'gasket-rotation-limit': 'rotación que soporta la junta (datos de la junta)',
    'rib-area': 'área de los nervios (registro)',
    temperatures: 'temperaturas de pernos y bridas (registro)',
    'test-pressure': 'presión de prueba (registro)',
    washers: 'arandelas (procedimiento)',
  },
} satisfies SheetTexts['targetLimits'];
