import type { JointSpecification, MakePlan, Payload, ProcedureContent } from '@seatwell/contract';
import type { ProcedureEvidence, TargetEvidence } from '@seatwell/workflow';
import { AREA, CREW, LUBRICANT, MAKE, PACK, PLACE, PROCEDURE, SYSTEM } from './ids.ts';

export const specification: JointSpecification = {
  flange: { standard: 'ASME-B16.5', size: 'NPS8', rating: '150', facing: 'raised-face' },
  bolting: { count: 8, thread: '3/4-10 UNC', grade: 'B7', nutGrade: '2H', length_mm: 110 },
  gasket: {
    family: 'spiral-wound',
    detail: 'graphite, CS outer ring',
    count: 1,
    contactInside_mm: 233.4,
    contactOutside_mm: 263.7,
    thickness_mm: 4.5,
  },
  clampedParts: [
    { kind: 'flange', thickness_mm: 28.4, note: null },
    { kind: 'gasket', thickness_mm: 4.5, note: null },
    { kind: 'flange', thickness_mm: 28.4, note: null },
  ],
  service: {
    medium: 'naphtha',
    pressure_MPa: 1.1,
    pressureAsEntered: { value: 11, unit: 'bar' },
    temperature_C: 180,
    temperatureAsEntered: null,
  },
  hotExposed: false,
};

export const plan: MakePlan = {
  makeId: MAKE,
  number: 1,
  purpose: 'final',
  workScope: 'break-and-remake',
  clampedParts: null,
  gasket: null,
  checkingLevel: null,
  proof: 'hydrotest',
  plannedOn: '2027-03-02',
  crewId: CREW,
  packs: [{ packId: PACK, role: 'inside' }],
};

export const listing: Payload<'joint-listed'> = {
  placeId: PLACE,
  tag: 'J-1001',
  kind: 'flange-pair',
  criticality: 'C',
  whereabouts: {
    areaId: AREA,
    systemId: SYSTEM,
    line: '8"-P-1203',
    location: 'Pump bay, level 2',
    drawing: 'ISO-1203-2',
    item: 'V-14',
    viewedFrom: 'downstream',
    bolt1At: 'top',
  },
  specification,
  makes: [plan],
  remark: null,
};

export const procedureContent: ProcedureContent = {
  numbering: 'clockwise',
  pattern: 'legacy',
  tools: 1,
  group: null,
  passPercents: [30, 70, 100],
  finalRound: true,
  relaxationPass: false,
  method: 'torque-wrench',
  lubricantId: LUBRICANT,
  appliesTo: {
    kinds: ['flange-pair', 'insert'],
    ratings: ['150', '300'],
    gasketFamilies: ['spiral-wound'],
    leastBolts: 4,
    mostBolts: 24,
    workScopes: ['break-and-remake', 'new', 'retighten-ambient', 'hot-bolting'],
  },
  policy: {
    area: 'tensile',
    minimumBoltUtilisation: 0.3,
    maximumBoltUtilisation: 0.7,
    scatter_percent: 25,
    targetBoltStress_MPa: null,
    source: 'invented for the tests',
  },
  cautions: ['Crack the far side first.'],
};

export const procedureEvidence: ProcedureEvidence = {
  procedureId: PROCEDURE,
  revision: 2,
  contentHash: 'b'.repeat(64),
  code: 'TP-08',
  numbering: 'clockwise',
  passCount: 3,
  finalRound: true,
  relaxationPass: false,
  method: 'torque-wrench',
};

export const targetEvidence: TargetEvidence = {
  basis: 'calculated',
  inputsHash: 'c'.repeat(64),
  calcVersion: '1',
  insideWindow: true,
  shortfallReason: null,
  boltStress_MPa: 345,
  area: 'tensile',
  boltLoad_N: 74_500,
  governedBy: 'gasket-seating',
  torque_Nm: 240,
  passes: [
    { percent: 30, torque_Nm: 72, pressure_MPa: 12 },
    { percent: 70, torque_Nm: 168, pressure_MPa: 28 },
    { percent: 100, torque_Nm: 240, pressure_MPa: 40 },
  ],
  gasketFamily: 'spiral-wound',
  boltGrade: 'B7',
  boltCondition: 'new',
  lubricant: 'Molybdenum paste',
  lubricantId: LUBRICANT,
  sources: ['invented for the tests'],
};
