import type { JointSpecification, MakePlan, Payload } from '@seatwell/contract';

/** The shutdown of the tests: four weeks in spring, two shifts. */
export const springShutdown: Payload<'shutdown-opened'> = {
  name: 'Spring',
  timeZone: 'Europe/Oslo',
  startsOn: '2027-03-01',
  endsOn: '2027-03-28',
  shifts: [
    { name: 'day', starts: '06:00', ends: '18:00' },
    { name: 'night', starts: '18:00', ends: '06:00' },
  ],
  units: 'SI',
  areaBasis: 'tensile',
};

/** The standard procedure of the tests: legacy pattern, three passes and a final round, clockwise numbers. */
export const procedureContent = (lubricantId: string): Payload<'procedure-drafted'>['content'] => ({
  numbering: 'clockwise',
  pattern: 'legacy',
  tools: 1,
  group: null,
  passPercents: [30, 70, 100],
  finalRound: true,
  relaxationPass: false,
  method: 'torque-wrench',
  lubricantId,
  appliesTo: { kinds: [], ratings: [], gasketFamilies: [], leastBolts: 4, mostBolts: 64, workScopes: [] },
  policy: {
    area: 'tensile',
    minimumBoltUtilisation: 0.2,
    maximumBoltUtilisation: 0.7,
    scatter_percent: 10,
    targetBoltStress_MPa: null,
    source: 'test policy',
  },
  cautions: ['Keep out of the line of fire of the bolts.'],
});

/** NPS 8 class 300 with a spiral wound gasket, 12 × 7/8-9 UNC B7: a joint with an open window. */
export const specification = (more: Partial<JointSpecification> = {}): JointSpecification => ({
  flange: { standard: 'ASME-B16.5', size: 'NPS8', rating: '300', facing: 'raised-face' },
  bolting: { count: 12, thread: '7/8-9 UNC', grade: 'B7', nutGrade: '2H', length_mm: 140 },
  gasket: {
    family: 'spiral-wound',
    detail: null,
    count: 1,
    contactInside_mm: null,
    contactOutside_mm: null,
    thickness_mm: 4.5,
  },
  clampedParts: [
    { kind: 'flange', thickness_mm: 39.7, note: null },
    { kind: 'gasket', thickness_mm: 4.5, note: null },
    { kind: 'flange', thickness_mm: 39.7, note: null },
  ],
  service: {
    medium: 'hydrocarbon',
    pressure_MPa: 2,
    pressureAsEntered: null,
    temperature_C: 120,
    temperatureAsEntered: null,
  },
  hotExposed: false,
  ...more,
});

/** A make as most are planned: final, broken and made again, proven by a hydrotest. */
export const finalMake = (makeId: string, more: Partial<MakePlan> = {}): MakePlan => ({
  makeId,
  number: 1,
  purpose: 'final',
  workScope: 'break-and-remake',
  clampedParts: null,
  gasket: null,
  checkingLevel: null,
  proof: 'hydrotest',
  plannedOn: null,
  crewId: null,
  packs: [],
  ...more,
});
