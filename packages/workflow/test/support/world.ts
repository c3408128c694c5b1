import type { QualifiedFor } from '@seatwell/contract';
import {
  DEFAULT_SETTINGS,
  dayOf,
  type PersonFacts,
  type ProcedureFacts,
  type RuleContext,
  type ToolFacts,
} from '@seatwell/workflow';
import * as id from './ids.ts';
import { procedureContent } from './register.ts';

const person = (
  personId: string,
  name: string,
  company: string,
  crewIds: readonly string[],
  qualifiedFor: readonly QualifiedFor[] = [],
): PersonFacts => ({
  personId,
  name,
  company,
  crewIds,
  qualifications:
    qualifiedFor.length === 0
      ? []
      : [
          {
            qualificationId: personId.replace('8000', '9000'),
            qualifiedFor,
            validFrom: '2026-01-01',
            validThrough: '2027-12-31',
            withdrawn: false,
          },
        ],
});

const fitter: readonly QualifiedFor[] = [
  'disassembly',
  'assembly',
  'face-inspection',
  'torque-wrench',
  'hydraulic-wrench',
];

export const persons: Readonly<Record<string, PersonFacts>> = Object.fromEntries(
  [
    person(id.ANA, 'Ana Fitter', 'Northbank Fitting', [id.CREW], fitter),
    person(id.BEN, 'Ben Fitter', 'Northbank Fitting', [id.CREW], fitter),
    person(id.CARL, 'Carl Chargehand', 'Northbank Fitting', [id.CREW], fitter),
    person(id.INES, 'Ines Inspector', 'Lindqvist Inspection', []),
    person(id.EDA, 'Eda Engineer', 'Site', []),
    person(id.OMAR, 'Omar Operator', 'Site', []),
    person(id.WIM, 'Wim Witness', 'Client', []),
    person(id.CORA, 'Cora Coordinator', 'Site', []),
  ].map((facts) => [facts.personId, facts]),
);

const tool = (
  toolId: string,
  tag: string,
  kind: string,
  scale: readonly [number, number],
  scaleUnit: ToolFacts['scaleUnit'],
): ToolFacts => ({
  toolId,
  tag,
  kind,
  scaleMinimum: scale[0],
  scaleMaximum: scale[1],
  scaleUnit,
  failedOn: null,
  calibrations: [
    {
      calibrationId: toolId.replace('8000', '9000'),
      calibratedOn: '2026-06-01',
      validThrough: '2027-06-01',
      provisional: false,
      clearedAt: null,
      hasCertificate: true,
      recordedAt: '2026-06-02T08:00:00.000Z',
    },
  ],
});

export const tools: Readonly<Record<string, ToolFacts>> = Object.fromEntries(
  [
    tool(id.WRENCH, 'TW-1', 'torque-wrench', [40, 340], 'N·m'),
    tool(id.TEST_GAUGE, 'PG-1', 'test-gauge', [0.1, 10], 'MPa'),
    tool(id.HYDRAULIC_WRENCH, 'HW-1', 'hydraulic-wrench', [10, 2000], 'N·m'),
    tool(id.PUMP, 'PU-1', 'pump', [1, 70], 'MPa'),
    tool(id.PUMP_GAUGE, 'PG-2', 'pressure-gauge', [1, 70], 'MPa'),
  ].map((facts) => [facts.toolId, facts]),
);

export const procedure: ProcedureFacts = {
  procedureId: id.PROCEDURE,
  revision: 2,
  code: 'TP-08',
  approved: true,
  superseded: false,
  content: procedureContent,
};

/** Everything around the joint, as a well-run shutdown has it. */
export type Surroundings = Omit<RuleContext, 'workTime' | 'workDay' | 'shiftEndDay' | 'shiftEnd' | 'joint' | 'make'>;

export const surroundings: Surroundings = {
  leftOvernight: false,
  // Of the gasket of the joint that the stories tell: 263.7 / 233.4 mm.
  seatingWidth_mm: 15.15,
  settings: DEFAULT_SETTINGS,
  performedBy: [id.ANA, id.BEN],
  signerPersonId: null,
  signed: false,
  actorRoles: ['technician'],
  persons,
  tools,
  procedure,
  talks: [
    {
      talkId: id.TALK,
      procedureId: id.PROCEDURE,
      revision: 2,
      heldAt: '2027-03-01T06:00:00.000Z',
      attendees: [id.ANA, id.BEN, id.CARL],
    },
  ],
  permits: [
    {
      permitId: id.PERMIT,
      number: 'PTW-118',
      isolationReference: 'ISO-44',
      jointIds: [id.JOINT],
      validFrom: '2027-03-01T00:00:00.000Z',
      validUntil: '2027-03-31T00:00:00.000Z',
      withdrawn: false,
    },
  ],
  pack: {
    packId: id.PACK,
    number: 'TP-12',
    pressure_MPa: 1.65,
    hold_min: 30,
    way: 'hydrotest',
    released: {
      boundaryWalked: true,
      blindsRated: true,
      reliefValvesOut: true,
      metalTemperature_C: 18,
      gaugeIds: [id.TEST_GAUGE],
    },
    relaxationDue: [],
    unclosedA: [],
    provisionalTools: [],
    readings: [
      {
        readAt: '2027-03-05T10:00:00.000Z',
        pressure_MPa: 1.7,
        held_min: 30,
        gaugeIds: [id.TEST_GAUGE],
        results: [
          { makeId: id.MAKE, result: 'no-leak' },
          { makeId: id.NEXT_MAKE, result: 'no-leak' },
        ],
      },
    ],
  },
  system: {
    systemId: id.SYSTEM,
    code: 'S-20',
    notProven: [],
    temporaryBlindsIn: [],
    temporaryFittings: [],
    unclosedA: [],
    unclosedB: [],
  },
  newTarget: null,
  shortfallAccepted: false,
  boltsInPass: null,
  elsewhereAtTheSameTime: [],
  lotRejections: [],
  lotSampled: null,
  unclosedPunchA: 0,
};

/** The times of a context; the shifts of the tests end at midnight UTC. */
export const timesAt = (workTime: string): Pick<RuleContext, 'workTime' | 'workDay' | 'shiftEndDay' | 'shiftEnd'> => {
  const day = dayOf(workTime, 'UTC');
  return { workTime, workDay: day, shiftEndDay: day, shiftEnd: `${day}T23:59:59.999Z` };
};
