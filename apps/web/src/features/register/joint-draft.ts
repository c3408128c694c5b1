import type {
  ClampedPart,
  Criticality,
  GasketFamilyCode,
  JointKind,
  JointSpecification,
  JointWhereabouts,
  MakePurpose,
  ProofWay,
  ShutdownPayload,
  WorkScope,
} from '@seatwell/contract';
import type { JointState } from '@seatwell/workflow';
import { type JointLimits, type LimitsMissing, limitsMissing, limitsOf, withLimits } from './joint-limits.ts';

type AsEntered = NonNullable<JointSpecification['service']['pressureAsEntered']>;

/** A joint as the form holds it: texts as typed, quantities in the API's units. */
export interface JointDraft {
  readonly tag: string;
  readonly kind: JointKind;
  readonly criticality: Criticality | '';
  readonly whereabouts: { readonly [Name in keyof Required<JointWhereabouts>]: string };
  readonly standard: JointSpecification['flange']['standard'];
  readonly size: string;
  readonly rating: string;
  readonly facing: JointSpecification['flange']['facing'];
  readonly boltCount: number | undefined;
  readonly thread: string;
  readonly grade: string;
  readonly nutGrade: string;
  readonly studLength_mm: number | undefined;
  readonly family: GasketFamilyCode | '';
  readonly gasketDetail: string;
  readonly gasketCount: number | undefined;
  readonly contactInside_mm: number | undefined;
  readonly contactOutside_mm: number | undefined;
  readonly gasketThickness_mm: number | undefined;
  readonly clampedParts: readonly ClampedPart[];
  readonly medium: string;
  readonly pressure_MPa: number | undefined;
  readonly pressureAsEntered: AsEntered | null;
  readonly temperature_C: number | undefined;
  readonly temperatureAsEntered: AsEntered | null;
  readonly hotExposed: boolean;
  readonly limits: JointLimits;
  readonly remark: string;
  readonly purpose: MakePurpose;
  readonly workScope: WorkScope;
  readonly proof: ProofWay;
  readonly plannedOn: string;
  readonly crewId: string;
  readonly packId: string;
}

const part = (kind: ClampedPart['kind']): ClampedPart => ({ kind, thickness_mm: null, note: null });

/** What the bolts of a kind clamp, from the viewing side, before anybody changes it. */
export function usualStack(kind: JointKind): readonly ClampedPart[] {
  if (kind === 'insert') return ['flange', 'gasket', 'spade', 'gasket', 'flange'].map((each) => part(each as 'flange'));
  if (kind === 'manway') return [part('cover'), part('gasket'), part('flange')];
  return [part('flange'), part('gasket'), part('flange')];
}

const nowhere: JointDraft['whereabouts'] = {
  areaId: '',
  systemId: '',
  line: '',
  location: '',
  drawing: '',
  item: '',
  viewedFrom: '',
  bolt1At: '',
  photo: '',
};

export const emptyJoint: JointDraft = {
  tag: '',
  kind: 'flange-pair',
  criticality: '',
  whereabouts: nowhere,
  standard: 'ASME-B16.5',
  size: '',
  rating: '',
  facing: 'raised-face',
  boltCount: undefined,
  thread: '',
  grade: '',
  nutGrade: '',
  studLength_mm: undefined,
  family: '',
  gasketDetail: '',
  gasketCount: 1,
  contactInside_mm: undefined,
  contactOutside_mm: undefined,
  gasketThickness_mm: undefined,
  clampedParts: usualStack('flange-pair'),
  medium: '',
  pressure_MPa: undefined,
  pressureAsEntered: null,
  temperature_C: undefined,
  temperatureAsEntered: null,
  hotExposed: false,
  limits: {},
  remark: '',
  purpose: 'final',
  workScope: 'break-and-remake',
  proof: 'hydrotest',
  plannedOn: '',
  crewId: '',
  packId: '',
};

/** The draft of a joint that the register holds; of a found one that nobody has described yet, the usual is offered. */
export function draftOf(joint: JointState): JointDraft {
  const held = heldDraft(joint);
  if (!joint.found || joint.bolting !== null || held.clampedParts.length > 0) return held;
  return {
    ...held,
    standard: standardOf(held.size),
    facing: 'raised-face',
    family: '',
    clampedParts: usualStack(held.kind),
  };
}

function standardOf(size: string): JointDraft['standard'] {
  if (size.startsWith('NPS')) return 'ASME-B16.5';
  return size.startsWith('DN') ? 'EN-1092-1' : 'custom';
}

function heldDraft(joint: JointState): JointDraft {
  const { flange, gasket, service, clampedParts, hotExposed } = joint.specification;
  const { bolting } = joint;
  const texts = Object.fromEntries(Object.entries(joint.whereabouts).map(([name, value]) => [name, value ?? '']));
  return {
    ...emptyJoint,
    tag: joint.tag,
    kind: joint.kind,
    criticality: joint.criticality,
    whereabouts: { ...nowhere, ...texts },
    standard: flange.standard,
    size: flange.size,
    rating: flange.rating,
    facing: flange.facing,
    boltCount: bolting?.count,
    thread: bolting?.thread ?? '',
    grade: bolting?.grade ?? '',
    nutGrade: bolting?.nutGrade ?? '',
    studLength_mm: bolting?.length_mm ?? undefined,
    family: gasket.family,
    gasketDetail: gasket.detail ?? '',
    gasketCount: gasket.count,
    contactInside_mm: gasket.contactInside_mm ?? undefined,
    contactOutside_mm: gasket.contactOutside_mm ?? undefined,
    gasketThickness_mm: gasket.thickness_mm ?? undefined,
    clampedParts,
    medium: service.medium ?? '',
    pressure_MPa: service.pressure_MPa ?? undefined,
    pressureAsEntered: service.pressureAsEntered,
    temperature_C: service.temperature_C ?? undefined,
    temperatureAsEntered: service.temperatureAsEntered,
    hotExposed,
    limits: limitsOf(joint.specification),
    remark: joint.remark ?? '',
  };
}

export type JointMissing =
  | LimitsMissing
  | 'tag-needed'
  | 'criticality-needed'
  | 'size-needed'
  | 'rating-needed'
  | 'family-needed'
  | 'gasket-count-needed'
  | 'thread-needed';

/** What the draft still lacks, the first of it; undefined when it is complete. */
export function jointMissing(draft: JointDraft): JointMissing | undefined {
  if (draft.tag.trim() === '') return 'tag-needed';
  if (draft.criticality === '') return 'criticality-needed';
  if (draft.size.trim() === '') return 'size-needed';
  if (draft.rating.trim() === '' && draft.standard !== 'custom') return 'rating-needed';
  if (draft.family === '') return 'family-needed';
  if (draft.gasketCount === undefined) return 'gasket-count-needed';
  if (draft.boltCount !== undefined && draft.thread.trim() === '') return 'thread-needed';
  return limitsMissing(draft.limits, draft.standard === 'custom');
}

const line = (typed: string) => (typed.trim() === '' ? null : typed.trim());

export function whereaboutsOf({ whereabouts }: JointDraft): JointWhereabouts {
  return Object.fromEntries(
    Object.entries(whereabouts).map(([name, value]) => [name, line(value)]),
  ) as unknown as JointWhereabouts;
}

export function specificationOf(draft: JointDraft): JointSpecification {
  const plain: JointSpecification = {
    flange: { standard: draft.standard, size: draft.size.trim(), rating: draft.rating.trim(), facing: draft.facing },
    bolting:
      draft.boltCount === undefined
        ? null
        : {
            count: draft.boltCount,
            thread: draft.thread.trim(),
            grade: line(draft.grade),
            nutGrade: line(draft.nutGrade),
            length_mm: draft.studLength_mm ?? null,
          },
    gasket: {
      family: draft.family === '' ? 'none' : draft.family,
      detail: line(draft.gasketDetail),
      count: draft.gasketCount ?? 0,
      contactInside_mm: draft.contactInside_mm ?? null,
      contactOutside_mm: draft.contactOutside_mm ?? null,
      thickness_mm: draft.gasketThickness_mm ?? null,
    },
    clampedParts: [...draft.clampedParts],
    service: {
      medium: line(draft.medium),
      pressure_MPa: draft.pressure_MPa ?? null,
      pressureAsEntered: draft.pressureAsEntered,
      temperature_C: draft.temperature_C ?? null,
      temperatureAsEntered: draft.temperatureAsEntered,
    },
    hotExposed: draft.hotExposed,
  };
  return withLimits(plain, draft.limits);
}

/** The payload that lists a new joint with its first make. */
export function listedOf(draft: JointDraft, placeId: string, makeId: string): ShutdownPayload<'joint-listed'> {
  if (draft.criticality === '') throw new Error('A joint without a criticality cannot be listed.');
  return {
    placeId,
    tag: draft.tag.trim(),
    kind: draft.kind,
    criticality: draft.criticality,
    whereabouts: whereaboutsOf(draft),
    specification: specificationOf(draft),
    makes: [
      {
        makeId,
        number: 1,
        purpose: draft.purpose,
        workScope: draft.workScope,
        clampedParts: null,
        gasket: null,
        checkingLevel: null,
        proof: draft.proof,
        plannedOn: line(draft.plannedOn),
        crewId: line(draft.crewId),
        packs: draft.packId === '' ? [] : [{ packId: draft.packId, role: 'inside' }],
      },
    ],
    remark: line(draft.remark),
  };
}
