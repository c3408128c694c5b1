/** How we hold a document: read in a public reproduction, from memory, or recomputed from a published formula. */
export type Held = 'read' | 'memory' | 'baseline';

export interface PublishedDocument {
  readonly title: string;
  readonly held: Held;
}

/** Documents whose printed examples are checked. None was read in print by us. */
export const DOCUMENTS = {
  'vdi-2230-coarse': {
    title: 'VDI 2230-1, table of assembly preloads and torques, coarse threads',
    held: 'memory',
  },
  'vdi-2230-fine': {
    title: 'VDI 2230:2001/2003 as reproduced in a fastener handbook, page 685, fine threads',
    held: 'read',
  },
  'stainless-handbook': {
    title: 'Fastener handbook, page 686, stainless property class 70',
    held: 'read',
  },
  'shigley-8-3': {
    title: 'Shigley, Mechanical Engineering Design, example 8-3',
    held: 'memory',
  },
  'kdf-handbook': {
    title: 'Handbook table of suggested assembly torque, A193 B7, T = K·D·F',
    held: 'read',
  },
  'bolt-load-chart': {
    title: 'Bolt-load chart at 50 % of yield, B7',
    held: 'read',
  },
  'pcc-1-torque': {
    title: 'ASME PCC-1, reference torque tables for 50 ksi and 345 MPa root-area stress',
    held: 'read',
  },
  'app-2-sheet': {
    title: 'Worked sheet of an NPS 12 class 150 weld neck flange, ASME VIII-1 App. 2 (studylib 26029669)',
    held: 'read',
  },
  'app-3-ring-joint': {
    title: 'Worked sheet of a ring-joint flange, ASME VIII-2 App. 3 (scribd 201372982)',
    held: 'read',
  },
  'nptel-lecture-15': {
    title: 'NPTEL, IIT Roorkee, Process equipment design, lecture 15, loose flange',
    held: 'read',
  },
  'crane-60': {
    title:
      'Crane Co., No. 60 valve catalog, torque and load of alloy steel stud bolts, as reproduced in a gasket handbook',
    held: 'read',
  },
  'tongue-groove-sheet': {
    title: 'Worked sheet of a tongue and groove flange, ASME VIII-1 App. 2 (scribd 169000491)',
    held: 'read',
  },
  'ring-flange-report': {
    title: 'Calculation report of an integral ring flange, ASME VIII-1:2017 (scribd 413018487)',
    held: 'read',
  },
  'elongation-calculator': { title: 'Public page of a bolt elongation calculator, M10 example', held: 'read' },
  'pcc-1-elongation': { title: 'Elongation on the form of ASME PCC-1', held: 'baseline' },
  'elongation-page': { title: 'Public page on bolt elongation, 7/8-9 stud', held: 'read' },
  'tensioner-note': { title: 'Load transfer factor of a tensioner maker’s note', held: 'baseline' },
  'pcc-2-501': { title: 'ASME PCC-2 article 501, stored energy (equations read)', held: 'baseline' },
  'b16-5-studs': { title: 'ASME B16.5 stud lengths', held: 'memory' },
  'pcc-1-areas': { title: 'ASME PCC-1 area tables of bolting, inch and metric', held: 'read' },
  'iso-898-1': { title: 'ISO 898-1, nominal stress areas (handbook page)', held: 'read' },
  'unf-table': { title: 'Public table of UNF thread dimensions', held: 'read' },
} as const satisfies Record<string, PublishedDocument>;

export type DocumentKey = keyof typeof DOCUMENTS;
