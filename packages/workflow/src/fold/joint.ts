import type { Payload } from '@seatwell/contract';
import type { JointState, MakeState, RecordedEvent } from '../state.ts';
import { newMake } from './new-make.ts';
import { unknownSpecification } from './unknown-specification.ts';
import { upcast } from './upcast.ts';

const nowhere: JointState['whereabouts'] = {
  areaId: null,
  systemId: null,
  line: null,
  location: null,
  drawing: null,
  item: null,
  viewedFrom: null,
  bolt1At: null,
};

function listed(jointId: string, payload: Payload<'joint-listed'>): JointState {
  return {
    jointId,
    placeId: payload.placeId,
    tag: payload.tag,
    kind: payload.kind,
    criticality: payload.criticality,
    whereabouts: payload.whereabouts,
    specification: payload.specification,
    bolting: payload.specification.bolting,
    found: null,
    voided: null,
    holds: [],
    remark: payload.remark,
    makes: payload.makes.map(newMake),
    version: 0,
  };
}

function found(jointId: string, payload: Payload<'joint-found'>): JointState {
  return {
    jointId,
    placeId: payload.placeId,
    tag: payload.temporaryNumber,
    // Nothing is known of it: the strictest demands until the coordinator has specified it.
    kind: 'flange-pair',
    criticality: 'A',
    whereabouts: { ...nowhere, areaId: payload.areaId },
    specification: {
      ...unknownSpecification,
      flange: { ...unknownSpecification.flange, size: payload.size ?? '', rating: payload.rating ?? '' },
    },
    bolting: null,
    found: { nearest: payload.nearest, photo: payload.photo },
    voided: null,
    holds: [],
    remark: payload.remark,
    makes: [
      newMake({
        makeId: payload.makeId,
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
      }),
    ],
    version: 0,
  };
}

/** The state that the first event of a joint makes. @throws Error when it is neither listed nor found. */
export function beginJoint(event: RecordedEvent): JointState {
  const payload = upcast(event.type, event.v, event.payload);
  if (event.jointId === null) throw new Error(`Event ${event.eventId} (${event.type}) names no joint.`);
  if (event.type === 'joint-listed') return listed(event.jointId, payload as Payload<'joint-listed'>);
  if (event.type === 'joint-found') return found(event.jointId, payload as Payload<'joint-found'>);
  throw new Error(`A joint begins by being listed or found, not with "${event.type}" (${event.eventId}).`);
}

const withoutUndefined = <T extends object>(part: T): Partial<T> =>
  Object.fromEntries(Object.entries(part).filter(([, value]) => value !== undefined)) as Partial<T>;

type RequiredParts<T> = { [K in keyof T]?: Exclude<T[K], undefined> };

function specified(joint: JointState, payload: Payload<'joint-specified'>): JointState {
  const { whereabouts, specification, reason: _reason, ...rest } = payload;
  return {
    ...joint,
    ...(withoutUndefined(rest) as RequiredParts<typeof rest>),
    whereabouts: {
      ...joint.whereabouts,
      ...(withoutUndefined(whereabouts ?? {}) as RequiredParts<NonNullable<typeof whereabouts>>),
    },
    specification: specification ?? joint.specification,
    bolting: specification ? specification.bolting : joint.bolting,
  };
}

const changeMake = (joint: JointState, makeId: string | null, change: (make: MakeState) => MakeState): JointState => ({
  ...joint,
  makes: joint.makes.map((make) => (make.makeId === makeId ? change(make) : make)),
});

function relisted(joint: JointState, payload: Payload<'joint-listed'>): JointState {
  const known = new Set(joint.makes.map((make) => make.makeId));
  const fresh = payload.makes.filter((plan) => !known.has(plan.makeId)).map(newMake);
  return {
    ...joint,
    placeId: payload.placeId,
    tag: payload.tag,
    kind: payload.kind,
    criticality: payload.criticality,
    whereabouts: payload.whereabouts,
    specification: payload.specification,
    bolting: payload.specification.bolting,
    remark: payload.remark,
    makes: [...joint.makes, ...fresh].sort((a, b) => a.number - b.number),
  };
}

/** An event of the register: it counts in the order in which it was recorded, apart from the work. */
export function foldRegister(joint: JointState, event: RecordedEvent): JointState {
  const payload = upcast(event.type, event.v, event.payload);
  switch (event.type) {
    case 'joint-listed':
      return relisted(joint, payload as Payload<'joint-listed'>);
    case 'joint-specified':
      return specified(joint, payload as Payload<'joint-specified'>);
    case 'joint-merged': {
      const { merged } = event.evidence;
      if (merged) {
        const { events: _events, ...as } = merged;
        return { ...joint, foundAs: [...(joint.foundAs ?? []), as] };
      }
      const { intoJointId, reason } = payload as Payload<'joint-merged'>;
      return { ...joint, voided: { why: 'merged', reason, intoJointId } };
    }
    case 'joint-voided': {
      const { why, reason } = payload as Payload<'joint-voided'>;
      return { ...joint, voided: { why, reason, intoJointId: null } };
    }
    case 'make-planned': {
      const plan = payload as Payload<'make-planned'>;
      if (joint.makes.some((make) => make.makeId === plan.makeId)) return joint;
      return { ...joint, makes: [...joint.makes, newMake(plan)].sort((a, b) => a.number - b.number) };
    }
    case 'make-assigned': {
      const { crewId, plannedOn, checkingLevel } = payload as Payload<'make-assigned'>;
      return changeMake(joint, event.makeId, (make) => ({
        ...make,
        crewId,
        plannedOn,
        checkingLevel: checkingLevel === undefined ? make.checkingLevel : checkingLevel,
      }));
    }
    case 'make-cancelled':
      return changeMake(joint, event.makeId, (make) => ({ ...make, cancelled: true }));
    case 'hold-placed': {
      const { holdId, reason, releasedBy } = payload as Payload<'hold-placed'>;
      const placedBy = event.recordedByPersonId;
      const hold = { holdId, reason, releasedBy, placedBy, placedAt: event.workTime };
      return { ...joint, holds: [...joint.holds.filter((h) => h.holdId !== holdId), hold] };
    }
    case 'hold-released': {
      const { holdId } = payload as Payload<'hold-released'>;
      return { ...joint, holds: joint.holds.filter((hold) => hold.holdId !== holdId) };
    }
    default:
      return joint;
  }
}
