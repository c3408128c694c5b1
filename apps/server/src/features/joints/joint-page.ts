import type { JointPage, PunchRow } from '@seatwell/contract';
import type { JointState } from '@seatwell/workflow';
import { Problem } from '../../platform/errors/problem.ts';
import { itemsOfJoint } from '../blinds/queries.ts';
import { permitRows } from '../permits/queries.ts';
import { punchRows } from '../punch-items/queries.ts';
import { namesOf, toolTagsOf } from '../reading/names.ts';
import { loadPlaces, placeOf, systemRefOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { reachOf } from './decide-on-makes.ts';
import { FactsLoader } from './facts.ts';
import { historyEntries, historyRows, personsOfHistory, toolsOfHistory } from './joint-history.ts';
import { jointActions } from './make-actions.ts';
import { makeAnswer } from './make-answer.ts';
import { assignedProcedures, packsOfJoint } from './make-extras.ts';
import { shownMake } from './shown-make.ts';

/** @throws Problem `not-found`: another shutdown's joint is as unknown as any */
export async function jointState({ db, siteId, shutdownId }: Reading, jointId: string): Promise<JointState> {
  const { rows } = await db.query<{ state: JointState }>({
    name: 'joint-state',
    text: 'SELECT state FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = $3',
    values: [siteId, shutdownId, jointId],
  });
  if (!rows[0]) throw new Problem('not-found', `This shutdown has no joint ${jointId}.`);
  return rows[0].state;
}

/** @throws Problem `not-found` when the shutdown has no joint of this tag */
export async function jointByTag({ db, siteId, shutdownId }: Reading, tag: string): Promise<JointState> {
  const { rows } = await db.query<{ state: JointState }>({
    name: 'joint-by-tag',
    text: 'SELECT state FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND tag = $3',
    values: [siteId, shutdownId, tag],
  });
  if (!rows[0]) throw new Problem('not-found', `This shutdown has no joint with the tag ${tag}.`);
  return rows[0].state;
}

const personsOfState = (joint: JointState): (string | null)[] => [
  ...joint.holds.map((hold) => hold.placedBy),
  ...joint.makes.flatMap((make) => [
    ...make.openedBy,
    ...make.workedBy,
    ...make.workRecordedBy,
    ...make.lastEventBy,
    ...(make.partTight?.leftBy ?? []),
    make.checkedBy,
  ]),
];

const toolsOfState = (joint: JointState): string[] =>
  joint.makes.flatMap((make) => [...make.toolsUsed, ...make.provisionalTools]);

function unclosed(items: readonly PunchRow[]): Partial<Record<'A' | 'B' | 'C', number>> {
  const counts: Partial<Record<'A' | 'B' | 'C', number>> = {};
  for (const item of items) {
    if (item.closedAt === null) counts[item.category] = (counts[item.category] ?? 0) + 1;
  }
  return counts;
}

/** Everything of one joint: its state, its makes with what the caller may record, and its whole history. */
export async function jointPage(reading: Reading, joint: JointState): Promise<JointPage> {
  const { db, siteId, shutdownId, actor, now } = reading;
  const { jointId } = joint;
  const facts = new FactsLoader(db, siteId, shutdownId);
  const [places, history, punchItems, permits, items, packs, procedures] = await Promise.all([
    loadPlaces(reading),
    historyRows(reading, joint),
    punchRows(reading, { closed: 'any', jointIds: [jointId] }),
    permitRows(reading, jointId),
    itemsOfJoint(reading, jointId),
    packsOfJoint(reading, joint),
    assignedProcedures(reading, joint),
  ]);
  const crewPersons = joint.makes.flatMap((make) => placeOf(places.crews, make.crewId)?.personIds ?? []);
  const [names, toolTags] = await Promise.all([
    namesOf(db, siteId, [...personsOfState(joint), ...personsOfHistory(history), ...crewPersons]),
    toolTagsOf(db, siteId, [...toolsOfState(joint), ...toolsOfHistory(history)]),
  ]);
  const around = { facts, places, names, packs, procedures, unclosedPunch: unclosed(punchItems) };
  const makes = await Promise.all(joint.makes.map((make) => makeAnswer(reading, around, joint, make)));
  return {
    joint: joint as unknown as JointPage['joint'],
    now,
    area: placeOf(places.areas, joint.whereabouts.areaId),
    system: systemRefOf(places, joint.whereabouts.systemId),
    shownMakeId: shownMake(joint)?.makeId ?? null,
    makes,
    actions: jointActions(actor, await reachOf(facts, shutdownId, joint, null), joint),
    history: historyEntries(history, joint, names, toolTags),
    punchItems,
    permits,
    items,
    names: names.record(),
    toolTags,
  };
}
