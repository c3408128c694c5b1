/** How we hold a document. Nothing has been read from the printed standard itself. */
export type HeldAs = 'read in public reproductions' | 'from memory' | 'common practice' | 'our own';

export interface SourceDocument {
  readonly title: string;
  readonly edition: string;
  readonly held: HeldAs;
  /** Folders of this package that rest on it. */
  readonly usedIn: readonly string[];
}

/** Every document that formulas and tables of this package rest on. */
export const SOURCES = {
  'asme-b1.1': {
    title: 'ASME B1.1, unified inch screw threads',
    edition: '2003 and later',
    held: 'from memory',
    usedIn: ['threads'],
  },
  'iso-898-1': {
    title: 'ISO 898-1, mechanical properties of fasteners; ISO 724, basic dimensions',
    edition: '2013',
    held: 'read in public reproductions',
    usedIn: ['threads', 'bolting'],
  },
  'asme-b16.5': {
    title: 'ASME B16.5, pipe flanges and flanged fittings',
    edition: '2009 (ratings); dimensions unchanged to 2020',
    held: 'read in public reproductions',
    usedIn: ['flanges', 'stud-length'],
  },
  'asme-b16.47': {
    title: 'ASME B16.47, large diameter steel flanges, series A and B',
    edition: '2006 and later',
    held: 'read in public reproductions',
    usedIn: ['flanges'],
  },
  'en-1092-1': {
    title: 'EN 1092-1, circular flanges, steel, PN designated',
    edition: '2007 with amendment 2013',
    held: 'from memory',
    usedIn: ['flanges'],
  },
  'asme-b16.20-21': {
    title: 'ASME B16.20 and B16.21, gaskets for pipe flanges',
    edition: 'not stated by the sources',
    held: 'read in public reproductions',
    usedIn: ['gaskets'],
  },
  'en-1514': {
    title: 'EN 1514-1 and EN 1514-2, dimensions of gaskets',
    edition: 'not stated by the sources',
    held: 'from memory',
    usedIn: ['gaskets'],
  },
  'astm-a193-a320': {
    title: 'ASTM A193/A193M and A320/A320M, bolting; A194/A194M, nuts',
    edition: 'as current about 2020',
    held: 'read in public reproductions',
    usedIn: ['bolting'],
  },
  'asme-b18.2.2': {
    title: 'ASME B18.2.2, nuts; ISO 4032; TEMA bolting data',
    edition: '2015; 2012; 9th',
    held: 'read in public reproductions',
    usedIn: ['bolting'],
  },
  washers: {
    title: 'ISO 7089, plain washers; ASTM F436, hardened steel washers',
    edition: '2000; 2011',
    held: 'from memory',
    usedIn: ['bolting', 'kit'],
  },
  'asme-viii-1': {
    title: 'ASME BPVC Section VIII Division 1, Appendix 2; UG-99, UG-102',
    edition: '2010 and later',
    held: 'from memory',
    usedIn: ['code-loads', 'gaskets', 'pressure-test', 'target'],
  },
  'asme-pcc-1': {
    title: 'ASME PCC-1, pressure boundary bolted flange joint assembly',
    edition: '2013 and 2019',
    held: 'from memory',
    usedIn: ['alignment', 'elongation', 'sequence', 'target', 'torque'],
  },
  'asme-pcc-2': {
    title: 'ASME PCC-2, repair of pressure equipment and piping, article 501',
    edition: '2008 and 2018',
    held: 'read in public reproductions',
    usedIn: ['pressure-test'],
  },
  'asme-b31.3': {
    title: 'ASME B31.3, process piping, 304.5.3, 309, 335.1.1, 345',
    edition: 'not dated',
    held: 'from memory',
    usedIn: ['alignment', 'blind', 'bolting', 'pressure-test', 'target'],
  },
  'vdi-2230': {
    title: 'VDI 2230-1, highly stressed bolted joints',
    edition: '2003 and 2015',
    held: 'from memory',
    usedIn: ['torque', 'target'],
  },
  'iso-16047': {
    title: 'ISO 16047, torque and clamp force testing',
    edition: '2005',
    held: 'from memory',
    usedIn: ['torque'],
  },
  'api-686': {
    title: 'API 686, machinery installation, chapter 6',
    edition: '2009',
    held: 'from memory',
    usedIn: ['alignment'],
  },
  'machinerys-handbook': {
    title: 'Machinery’s Handbook, accuracy of bolt preload application methods',
    edition: 'not dated',
    held: 'read in public reproductions',
    usedIn: ['target'],
  },
  'tensioner-note': {
    title: 'Application note of a maker of bolt tensioners, load transfer factor',
    edition: 'not dated',
    held: 'read in public reproductions',
    usedIn: ['tensioner'],
  },
  kellogg: {
    title: 'Equivalent pressure of an external force and moment, after Kellogg',
    edition: 'second',
    held: 'from memory',
    usedIn: ['code-loads'],
  },
  'cross-rule': {
    title: 'Cross order of counts without a list; spread of tool sets',
    edition: 'this package',
    held: 'our own',
    usedIn: ['sequence'],
  },
} as const satisfies Record<string, SourceDocument>;

export type SourceKey = keyof typeof SOURCES;
