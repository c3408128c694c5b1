import type { ImportDifference, JointSpecification, JointWhereabouts } from '@seatwell/contract';
import type { JointState, MakeState, RegisterField } from '@seatwell/workflow';

/** What an import can say of a joint: the joint's part, and its make's crew and day. */
export interface DescribedJoint {
  readonly kind: JointState['kind'];
  readonly criticality: JointState['criticality'];
  readonly whereabouts: JointWhereabouts;
  readonly specification: JointSpecification;
  readonly remark: string | null;
  readonly plannedOn: string | null;
  readonly crewId: string | null;
}

export const describeJoint = (joint: JointState, make: MakeState | null): DescribedJoint => ({
  kind: joint.kind,
  criticality: joint.criticality,
  whereabouts: joint.whereabouts,
  specification: joint.specification,
  remark: joint.remark,
  plannedOn: make?.plannedOn ?? null,
  crewId: make?.crewId ?? null,
});

type Shown = string | number | null;
type NameOf = (id: string | null) => string | null;

const quantity = (si: number | null, entered: { value: number; unit: string } | null, unit: string): Shown =>
  entered ? `${entered.value} ${entered.unit}` : si === null ? null : `${si} ${unit}`;

/** Each field as people read it, so that before and after can stand side by side. */
const SHOWN: Readonly<Partial<Record<RegisterField, (joint: DescribedJoint, nameOf: NameOf) => Shown>>> = {
  area: ({ whereabouts }, nameOf) => nameOf(whereabouts.areaId),
  system: ({ whereabouts }, nameOf) => nameOf(whereabouts.systemId),
  line: ({ whereabouts }) => whereabouts.line,
  location: ({ whereabouts }) => whereabouts.location,
  drawing: ({ whereabouts }) => whereabouts.drawing,
  item: ({ whereabouts }) => whereabouts.item,
  viewedFrom: ({ whereabouts }) => whereabouts.viewedFrom,
  bolt1At: ({ whereabouts }) => whereabouts.bolt1At,
  kind: ({ kind }) => kind,
  standard: ({ specification }) => specification.flange.standard,
  size: ({ specification }) => specification.flange.size,
  rating: ({ specification }) => specification.flange.rating,
  facing: ({ specification }) => specification.flange.facing,
  boltCount: ({ specification }) => specification.bolting?.count ?? null,
  boltThread: ({ specification }) => specification.bolting?.thread ?? null,
  boltLength: ({ specification }) => quantity(specification.bolting?.length_mm ?? null, null, 'mm'),
  boltGrade: ({ specification }) => specification.bolting?.grade ?? null,
  gasketFamily: ({ specification }) => specification.gasket.family,
  gasketDetail: ({ specification }) => specification.gasket.detail,
  gasketCount: ({ specification }) => specification.gasket.count,
  insertThickness: ({ specification }) => quantity(insertOf(specification)?.thickness_mm ?? null, null, 'mm'),
  medium: ({ specification }) => specification.service.medium,
  designPressure: ({ specification: { service } }) => quantity(service.pressure_MPa, service.pressureAsEntered, 'MPa'),
  designTemperature: ({ specification: { service } }) =>
    quantity(service.temperature_C, service.temperatureAsEntered, '°C'),
  criticality: ({ criticality }) => criticality,
  plannedDate: ({ plannedOn }) => plannedOn,
  crew: ({ crewId }, nameOf) => nameOf(crewId),
  remark: ({ remark }) => remark,
};

const PAIR = new Set(['flange', 'gasket', 'blind-flange', 'cover']);

/** The part between the two gaskets of an insert joint. */
export const insertOf = (specification: JointSpecification) =>
  specification.clampedParts.find((part) => !PAIR.has(part.kind));

/** Field by field what would change, in the order of the register's fields. */
export function differencesOf(before: DescribedJoint, after: DescribedJoint, nameOf: NameOf): ImportDifference[] {
  return Object.entries(SHOWN).flatMap(([field, show]) => {
    const was = show(before, nameOf);
    const becomes = show(after, nameOf);
    return was === becomes ? [] : [{ field, before: was, after: becomes }];
  });
}
