/** Ways to load a bolt. */
export const TIGHTENING_METHODS = ['torque-wrench', 'hydraulic-wrench', 'tensioner', 'elongation'] as const;
export type TighteningMethod = (typeof TIGHTENING_METHODS)[number];

export interface MethodScatter {
  readonly scatter_percent: number;
  /** The nut is turned under load: the bolt carries torsion too. */
  readonly torsion: boolean;
  readonly source: string;
}

/** Scatter of bolt load by method: the wider end of the printed range. Machinery's Handbook (read). */
export const METHOD_SCATTER: Readonly<Record<TighteningMethod, MethodScatter>> = {
  'torque-wrench': {
    scatter_percent: 25,
    torsion: true,
    source: 'Machinery’s Handbook, accuracy of bolt preload: torque wrench ±25 % (±30 % unlubricated)',
  },
  'hydraulic-wrench': {
    scatter_percent: 25,
    torsion: true,
    source: 'Machinery’s Handbook, accuracy of bolt preload: as torque wrench, ±25 %',
  },
  tensioner: {
    scatter_percent: 15,
    torsion: false,
    source: 'Machinery’s Handbook, accuracy of bolt preload: hydraulic tensioner ±10-15 %',
  },
  elongation: {
    scatter_percent: 5,
    torsion: true,
    source: 'Machinery’s Handbook, accuracy of bolt preload: elongation ±3-5 %',
  },
};
