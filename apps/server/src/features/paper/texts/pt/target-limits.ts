import type { SheetTexts } from '../sheet-texts.ts';

/** What a target assumes of its bolts, and the limits that its window holds or does not. */
export const targetLimits = {
  notChecked: 'Não verificado',
  item: '{limit} (falta: {missing})',
  coated: 'com revestimento: {coating}',
  bare: 'sem revestimento',
  washers: { 0: 'sem arruelas', 1: 'uma arruela por parafuso', 2: 'duas arruelas por parafuso' },
  elongation: 'Alongamento',
  elongationLine: '{mm} mm ({in} in) em {length} mm entre os meios das porcas, módulo {GPa} GPa',
  limit: {
    'gasket-thermal-loss': 'parafusos mais quentes que os flanges',
    'bolt-thermal-gain': 'parafuso, flanges mais quentes',
    'gasket-thermal-gain': 'junta, flanges mais quentes',
    'flange-rotation': 'rotação do flange',
    'flange-rigidity': 'rigidez do flange',
    'flange-stress-assembly': 'tensões no flange na montagem',
    'flange-stress-operating': 'tensões no flange em operação',
    'flange-stress-test': 'tensões no flange no teste',
  },
  unchecked: {
    'coating-temperature': 'temperatura do revestimento',
    'external-load': 'tração e momento externos',
    'flange-rotation': 'rotação do flange',
    'flange-strength': 'resistência do flange',
    'gasket-test': 'junta na pressão de teste',
    'nut-bearing': 'apoio sob a porca',
    'pass-partition-ribs': 'nervuras de partição da junta',
    thermal: 'parafusos e flanges em temperaturas diferentes',
  },
  missing: {
    'bolt-material': 'módulo e dilatação dos parafusos (procedimento)',
    'clamped-thickness': 'espessura de cada peça apertada (registro)',
    coating: 'revestimento (procedimento)',
    'external-load': 'tração e momento (registro)',
    'flange-strength-data': 'tensões admissíveis ou tensão máxima de parafuso do flange (registro)',
    'gasket-rotation-limit': 'rotação que a junta suporta (dados da junta)',
    'rib-area': 'área das nervuras (registro)',
    temperatures: 'temperaturas de parafusos e flanges (registro)',
    'test-pressure': 'pressão de teste (registro)',
    washers: 'arruelas (procedimento)',
  },
} satisfies SheetTexts['targetLimits'];
