/** What a grade demands of its nut and of its hardness. ASTM A193, A320, A194, ISO 898-2 (from memory). */
export interface GradePairing {
  readonly nuts: readonly string[];
  /** Highest hardness of stud and nut, where the grade limits it for sour or cracking service. */
  readonly maximumHardness_HBW?: number;
  readonly austenitic?: true;
}

export const GRADE_PAIRING: Readonly<Record<string, GradePairing>> = {
  B7: { nuts: ['A194 2H', 'A194 4', 'A194 7'] },
  B7M: { nuts: ['A194 2HM', 'A194 7M'], maximumHardness_HBW: 235 },
  B16: { nuts: ['A194 4', 'A194 7'] },
  'B8 Class 1': { nuts: ['A194 8', 'A194 8A'], austenitic: true },
  'B8M Class 1': { nuts: ['A194 8M', 'A194 8MA'], austenitic: true },
  'B8 Class 2': { nuts: ['A194 8'], austenitic: true },
  'B8M Class 2': { nuts: ['A194 8M'], austenitic: true },
  L7: { nuts: ['A194 4', 'A194 7'] },
  L7M: { nuts: ['A194 7M'], maximumHardness_HBW: 235 },
  L43: { nuts: ['A194 4', 'A194 7'] },
  '5.6': { nuts: ['ISO 898-2 class 5', 'ISO 898-2 class 8'] },
  '8.8': { nuts: ['ISO 898-2 class 8', 'ISO 898-2 class 10'] },
  '10.9': { nuts: ['ISO 898-2 class 10', 'ISO 898-2 class 12'] },
  '12.9': { nuts: ['ISO 898-2 class 12'] },
};

/** Upper temperature of coatings and platings on bolting, °C (common practice; the maker's value goes first). */
export const COATING_LIMITS: readonly { readonly coating: string; readonly maximum_C: number; readonly why: string }[] =
  [
    { coating: 'zinc', maximum_C: 210, why: 'half of the melting point; liquid-metal attack above 419 °C' },
    { coating: 'cadmium', maximum_C: 160, why: 'half of the melting point; liquid-metal attack above 321 °C' },
    { coating: 'ptfe', maximum_C: 230, why: 'the binder softens' },
    { coating: 'aluminium-ceramic', maximum_C: 590, why: 'the binder oxidises' },
  ];
