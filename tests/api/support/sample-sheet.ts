import type { JointSpecification, ProcedureContent } from '@seatwell/contract';
import { DEFAULT_SETTINGS, type JointState, type MakeState, newMake, type TargetEvidence } from '@seatwell/workflow';
import type { SheetSource } from '../../../apps/server/src/features/paper/joint-sheet/sheet-source.ts';
import { finalMake, procedureContent, specification } from './sample-plant.ts';

const id = (n: number) => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;

export const procedureOf = (more: Partial<ProcedureContent> = {}): ProcedureContent => ({
  ...procedureContent(id(7)),
  policy: {
    area: 'tensile',
    minimumBoltUtilisation: 0.3,
    maximumBoltUtilisation: 0.7,
    scatter_percent: 30,
    targetBoltStress_MPa: null,
    source: 'sample policy',
  },
  cautions: ['Two persons at the hydraulic hose.', 'Keep the reaction arm clear of fingers.'],
  ...more,
});

export const targetOf = (torque_Nm: number, more: Partial<TargetEvidence> = {}): TargetEvidence => ({
  basis: 'calculated',
  inputsHash: 'a'.repeat(64),
  calcVersion: '1',
  insideWindow: true,
  shortfallReason: null,
  boltStress_MPa: 345,
  area: 'tensile',
  boltLoad_N: 102_800,
  governedBy: 'gasket-target',
  torque_Nm,
  passes: [30, 70, 100].map((percent) => ({
    percent,
    torque_Nm: (torque_Nm * percent) / 100,
    pressure_MPa: null,
  })),
  gasketFamily: 'spiral-wound',
  boltGrade: 'B7',
  boltCondition: 'new',
  lubricant: 'nickel paste',
  lubricantId: id(7),
  gasketDataId: id(8),
  tableId: null,
  sources: ['sample gasket sheet', 'sample lubricant sheet', 'sample policy'],
  ...more,
});

const specificationOf = (more: Partial<JointSpecification> = {}): JointSpecification =>
  specification({
    gasket: {
      family: 'spiral-wound',
      detail: '316L / graphite, inner and outer ring',
      count: 1,
      contactInside_mm: 233.4,
      contactOutside_mm: 263.7,
      thickness_mm: 4.5,
    },
    ...more,
  });

export const makeOf = (more: Partial<MakeState> = {}): MakeState => ({
  ...newMake(finalMake(id(2), { plannedOn: '2027-03-09' })),
  stage: 'engineered',
  stageSince: '2027-03-08T09:00:00.000Z',
  target: targetOf(370),
  lastEventAt: '2027-03-08T09:00:00.000Z',
  ...more,
});

export const jointOf = (
  make: MakeState,
  more: Partial<Omit<JointState, 'specification'>> = {},
  specification: Partial<JointSpecification> = {},
): JointState => {
  const specified = specificationOf(specification);
  return {
    jointId: id(1),
    placeId: id(3),
    tag: 'U41-P-1107-F3',
    kind: 'flange-pair',
    criticality: 'B',
    whereabouts: {
      areaId: null,
      systemId: null,
      line: '8"-HC-4101-C3A',
      location: 'pipe rack, level 2, column 14',
      drawing: 'ISO-4101-02',
      item: 'P-1107',
      viewedFrom: 'the pump side',
      bolt1At: 'the top, by the vent',
    },
    specification: specified,
    bolting: specified.bolting,
    found: null,
    voided: null,
    holds: [],
    remark: null,
    makes: [make],
    version: 7,
    ...more,
  };
};

/** A sheet's source: NPS 8 class 300, 12 bolts, engineered, unless the test says otherwise. */
export function sourceOf(more: Partial<SheetSource> = {}): SheetSource {
  const make = more.make ?? makeOf();
  return {
    site: 'Sample site',
    shutdown: 'Spring 2027',
    timeZone: 'Europe/Oslo',
    settings: DEFAULT_SETTINGS,
    address: `https://plant.example/shutdowns/${id(9)}/joints/${id(1)}`,
    printedAt: '2027-03-09T05:00:00.000Z',
    joint: jointOf(make),
    make,
    area: 'U41 Unit 41',
    system: '41-01 Feed',
    crew: 'D1',
    packs: [{ number: 'TP-41-01', role: 'inside' }],
    procedure: {
      code: 'BP-01',
      title: 'Torque, legacy cross',
      revision: 2,
      approved: true,
      superseded: false,
      content: procedureOf(),
    },
    lubricant: { name: 'nickel paste', nutFactor: 0.16, source: 'sample lubricant sheet' },
    flags: [],
    names: {},
    window: {
      lower: [
        { name: 'bolt-minimum', boltStress_MPa: 217, area: 'tensile', source: 'sample' },
        { name: 'gasket-seating', boltStress_MPa: 180, area: 'tensile', source: 'sample' },
      ],
      upper: [{ name: 'gasket-maximum', boltStress_MPa: 470, area: 'tensile', source: 'sample' }],
    },
    photo: null,
    pump: null,
    ...more,
  };
}
