import {
  type Criticality,
  type ImportDifference,
  type ImportOutcome,
  type ImportProblem,
  type MakePlan,
  type Payload,
  shutdownPayloads,
} from '@seatwell/contract';
import type { JointState, RegisterField, RegisterValues, RowReading } from '@seatwell/workflow';
import { uuidv7 } from 'uuidv7';
import { shownMake } from '../joints/shown-make.ts';
import { type DescribedJoint, describeJoint, differencesOf } from './described-joint.ts';
import type { Placed } from './named-things.ts';
import { specificationFrom } from './specification-from-row.ts';

/** What confirming does with one row: exactly what the preview showed. */
export interface RowPlan {
  readonly listed?: Payload<'joint-listed'>;
  readonly specified?: Payload<'joint-specified'>;
  readonly assigned?: Payload<'make-assigned'>;
  readonly makeId?: string;
}

export interface PlannedRow {
  readonly outcome: ImportOutcome;
  readonly jointId: string | null;
  readonly version: number | null;
  readonly stage: string | null;
  readonly differences: readonly ImportDifference[];
  readonly problems: readonly ImportProblem[];
  readonly plan: RowPlan | null;
}

interface Row {
  readonly reading: RowReading;
  readonly problems: readonly ImportProblem[];
  readonly placed: Placed;
  readonly joint: JointState | null;
  readonly placeId: string | undefined;
  readonly fileName: string;
  readonly nameOf: (id: string | null) => string | null;
}

const note = (row: Row, field: RegisterField, code: string, message: string): ImportProblem => ({
  rowNumber: row.reading.rowNumber,
  column: '',
  field,
  value: '',
  severity: 'shown',
  code,
  message,
});

/** Plans one row: a joint to be listed, a change of one, or nothing. Rows in error are planned as nothing. */
export function planRow(row: Row): PlannedRow {
  if (row.problems.some((problem) => problem.severity === 'error')) {
    const { joint } = row;
    return {
      outcome: 'error',
      jointId: joint?.jointId ?? null,
      version: joint?.version ?? null,
      stage: joint ? (shownMake(joint)?.stage ?? null) : null,
      differences: [],
      problems: row.problems,
      plan: null,
    };
  }
  return row.joint ? planChange(row, row.joint) : planNew(row);
}

function notesOn(row: Row, after: DescribedJoint): ImportProblem[] {
  const { values } = row.reading;
  const notes: ImportProblem[] = [];
  if (after.specification.bolting === null && (values.boltCount !== undefined || values.boltThread !== undefined)) {
    notes.push(
      note(
        row,
        'boltThread',
        'bolting-incomplete',
        'Bolts need a count of at least 3 and a size; the sheet has only part of it and no standard fills the rest. The bolting stays open until an engineer enters it.',
      ),
    );
  }
  if (values.gasketFamily === undefined && after.specification.gasket.family === 'none') {
    notes.push(
      note(row, 'gasketFamily', 'gasket-open', 'The sheet names no gasket. It stays open until an engineer enters it.'),
    );
  }
  if (values.designPressure && values.designPressure.si < 0) {
    notes.push(
      note(
        row,
        'designPressure',
        'below-atmosphere',
        `${values.designPressure.si} MPa gauge is below the atmosphere: the design pressure is left empty. Enter the highest pressure that the joint has to hold.`,
      ),
    );
  }
  return notes;
}

function planNew(row: Row): PlannedRow {
  const { values } = row.reading;
  const make: MakePlan = {
    makeId: uuidv7(),
    number: 1,
    purpose: 'final',
    workScope: values.workScope ?? 'break-and-remake',
    clampedParts: null,
    gasket: null,
    checkingLevel: null,
    proof: 'hydrotest',
    plannedOn: values.plannedDate ?? null,
    crewId: row.placed.crewId,
    packs: row.placed.packIds.map((packId) => ({ packId, role: 'inside' as const })),
  };
  const after = laidOver(row, null);
  const listed: Payload<'joint-listed'> = {
    placeId: row.placeId ?? uuidv7(),
    tag: values.tag ?? '',
    kind: after.kind,
    criticality: after.criticality,
    whereabouts: after.whereabouts,
    specification: after.specification,
    makes: [make],
    remark: after.remark,
  };
  const checked = shutdownPayloads['joint-listed'].safeParse(listed);
  if (!checked.success) return notStorable(row, checked.error.issues);
  return {
    outcome: 'new',
    jointId: uuidv7(),
    version: null,
    stage: null,
    differences: [],
    problems: [...row.problems, ...notesOn(row, after)],
    plan: { listed: checked.data, makeId: make.makeId },
  };
}

/** What the reading let through and the record cannot hold is an error of the row, never a surprise at the end. */
function notStorable(row: Row, issues: readonly { path: PropertyKey[]; message: string }[]): PlannedRow {
  const problems = issues.map(
    ({ path, message }): ImportProblem => ({
      ...note(row, 'tag', 'not-storable', `${path.join('.')}: ${message}. Correct it in the sheet.`),
      severity: 'error',
    }),
  );
  return {
    outcome: 'error',
    jointId: row.joint?.jointId ?? null,
    version: null,
    stage: null,
    differences: [],
    problems: [...row.problems, ...problems],
    plan: null,
  };
}

/** The joint as it would be: what the row says over what the register says; an empty cell changes nothing. */
function laidOver(row: Row, known: DescribedJoint | null): DescribedJoint {
  const { values } = row.reading;
  const filled: ReadonlySet<RegisterField> = new Set(row.reading.filled);
  const where = known?.whereabouts;
  const kind = known && filled.has('kind') ? known.kind : (values.kind ?? known?.kind ?? 'flange-pair');
  return {
    kind,
    criticality: ((known && filled.has('criticality') ? undefined : values.criticality) ??
      known?.criticality ??
      'A') as Criticality,
    whereabouts: {
      areaId: row.placed.areaId ?? where?.areaId ?? null,
      systemId: row.placed.systemId ?? where?.systemId ?? null,
      line: values.line ?? where?.line ?? null,
      location: values.location ?? where?.location ?? null,
      drawing: values.drawing ?? where?.drawing ?? null,
      item: values.item ?? where?.item ?? null,
      viewedFrom: values.viewedFrom ?? where?.viewedFrom ?? null,
      bolt1At: values.bolt1At ?? where?.bolt1At ?? null,
    },
    specification: specificationFrom({ ...values, kind }, filled, known?.specification ?? null),
    remark: values.remark ?? known?.remark ?? null,
    plannedOn: values.plannedDate ?? known?.plannedOn ?? null,
    crewId: row.placed.crewId ?? known?.crewId ?? null,
  };
}

function planChange(row: Row, joint: JointState): PlannedRow {
  const make = shownMake(joint);
  const before = describeJoint(joint, make);
  const base = { jointId: joint.jointId, version: joint.version, stage: make?.stage ?? null };
  if (joint.voided) {
    const voided = note(
      row,
      'tag',
      'voided-here',
      `${joint.tag} was taken out of the work (${joint.voided.why}): ${joint.voided.reason}. The row changes nothing.`,
    );
    return { ...base, outcome: 'same', differences: [], problems: [...row.problems, voided], plan: null };
  }
  const after = laidOver(row, before);
  const differences = differencesOf(before, after, row.nameOf);
  const problems = [...row.problems, ...notesOn(row, after), ...keptAsPlanned(row, joint)];
  if (differences.length === 0) return { ...base, outcome: 'same', differences, problems, plan: null };
  const fields = new Set(differences.map((difference) => difference.field));
  const forMake = fields.has('plannedDate') || fields.has('crew');
  const ofJoint = [...fields].some((field) => field !== 'plannedDate' && field !== 'crew');
  const specified = ofJoint ? specifiedBy(row, before, after) : undefined;
  if (specified) {
    const checked = shutdownPayloads['joint-specified'].safeParse(specified);
    if (!checked.success) return notStorable(row, checked.error.issues);
  }
  const assigned = forMake && make ? { crewId: after.crewId, plannedOn: after.plannedOn } : undefined;
  return {
    ...base,
    outcome: 'changed',
    differences,
    problems,
    plan: {
      ...(specified ? { specified } : {}),
      ...(assigned && make ? { assigned, makeId: make.makeId } : {}),
    },
  };
}

function specifiedBy(row: Row, before: DescribedJoint, after: DescribedJoint): Payload<'joint-specified'> {
  const differs = (a: unknown, b: unknown) => JSON.stringify(a) !== JSON.stringify(b);
  const whereabouts = Object.fromEntries(
    Object.entries(after.whereabouts).filter(
      ([name, value]) => value !== before.whereabouts[name as keyof DescribedJoint['whereabouts']],
    ),
  );
  return {
    ...(before.kind === after.kind ? {} : { kind: after.kind }),
    ...(before.criticality === after.criticality ? {} : { criticality: after.criticality }),
    ...(Object.keys(whereabouts).length === 0 ? {} : { whereabouts }),
    ...(differs(before.specification, after.specification) ? { specification: after.specification } : {}),
    ...(before.remark === after.remark ? {} : { remark: after.remark }),
    reason: `Import of ${row.fileName}`.slice(0, 2000),
  };
}

/** Work scope and packs belong to a make as it was planned: another one has to be planned for them. */
function keptAsPlanned(row: Row, joint: JointState): ImportProblem[] {
  const make = shownMake(joint);
  const { values, filled } = row.reading;
  const notes: ImportProblem[] = [];
  if (!make) return notes;
  if (values.workScope && !filled.includes('workScope') && values.workScope !== make.workScope) {
    notes.push(
      note(
        row,
        'workScope',
        'work-scope-kept',
        `The sheet has “${values.workScope}”, the make was planned as “${make.workScope}”, which is kept. Cancel the make and plan another to change it.`,
      ),
    );
  }
  const planned = make.packs.map((pack) => row.nameOf(pack.packId) ?? '').sort();
  const said = [...new Set((row.placed.packIds ?? []).map((packId) => row.nameOf(packId) ?? ''))].sort();
  if (said.length > 0 && planned.join() !== said.join()) {
    notes.push(
      note(
        row,
        'testPack',
        'packs-kept',
        `The sheet has test pack ${said.join(', ')}, the make was planned for ${planned.join(', ') || 'none'}, which is kept. Cancel the make and plan another to change it.`,
      ),
    );
  }
  return notes;
}

/** What was read, as text by field, for the table of the preview. */
export function shownValues(values: RegisterValues): Record<string, string> {
  const shown: Record<string, string> = {};
  for (const [field, value] of Object.entries(values)) {
    if (field === 'insert' || value === undefined) continue;
    if (typeof value === 'object' && 'entered' in value) shown[field] = `${value.entered.value} ${value.entered.unit}`;
    else shown[field] = Array.isArray(value) ? value.join(', ') : String(value);
  }
  return shown;
}
