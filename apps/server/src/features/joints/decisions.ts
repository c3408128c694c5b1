import type { EventType, Payload } from '@seatwell/contract';
import { requireAllowed } from '../../platform/access/allows.ts';
import { raisePunchItem } from '../punch-items/decisions.ts';
import type { Decide, DecisionInput, Decisions, Recording } from '../recording/decision.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { judgeJoint, refuse } from './decide-on-makes.ts';
import { FactsLoader } from './facts.ts';
import { lockSubject } from './lock-subject.ts';
import { jointMerged } from './merge-joints.ts';
import { beginJoints } from './new-joints.ts';
import { projectJoints } from './project-joints.ts';

/** Events about one joint or one of its makes that all take the same path: lock, judge, fold, project. */
const JOINT_EVENTS = [
  'joint-specified',
  'joint-voided',
  'make-planned',
  'make-assigned',
  'make-cancelled',
  'procedure-assigned',
  'target-approved',
  'hold-placed',
  'hold-released',
  'break-released',
  'opened',
  'faces-inspected',
  'nipped-up',
  'pass-recorded',
  'final-round-recorded',
  'relaxation-pass-recorded',
  'stud-replaced',
  'loosened',
  'leak-found',
  'checked',
  'witnessed',
  'witness-waived',
  'deviation-accepted',
  'proven',
  'hand-over-offered',
  'handed-over',
  'taken-back',
] as const satisfies readonly EventType[];

export type JointEvent = (typeof JOINT_EVENTS)[number];

/** The joint as a decision leaves it, with what else the event brings about. */
export async function recordOnJoint(
  input: DecisionInput,
  around?: Parameters<typeof judgeJoint>[4],
): Promise<Recording> {
  const shutdown = shutdownOf(input);
  const facts = new FactsLoader(input.tx, shutdown.siteId, shutdown.shutdownId);
  const { joint, makeId } = await lockSubject(input);
  const row = {
    jointId: joint.jointId,
    makeId,
    versionSeen: input.versionSeen,
    payload: input.payload,
  };
  const judgement = await judgeJoint(input, facts, joint, row, around);
  if (judgement.outcome === 'refused') refuse(judgement.failed);
  const { judged } = judgement;
  const rollup = await projectJoints(input.tx, shutdown, [{ before: joint, after: judged.after }], input.now);
  const make = judged.after.makes.find((each) => each.makeId === judged.makeId);
  return {
    jointId: joint.jointId,
    makeId: judged.makeId,
    evidence: judged.evidence,
    reviewCodes: judged.reviewCodes,
    failed: judged.failed,
    rollup,
    stage: make?.stage ?? null,
    version: judged.after.version,
  };
}

/** A leak raises an A item of its own: nothing is started up over it. */
const leakFound: Decide<'leak-found'> = async (input) => {
  const recording = await recordOnJoint(input);
  const { payload } = input;
  await raisePunchItem(
    input.tx,
    shutdownOf(input),
    {
      punchId: payload.punchId,
      category: 'A',
      text: payload.remark,
      jointId: input.subjectId,
      packId: payload.packId,
      systemId: null,
      owner: null,
    },
    { at: input.workTime, by: input.actor.personId },
  );
  return recording;
};

/** A rejected face becomes a punch item, so that it is asked about until it is dealt with. */
const facesInspected: Decide<'faces-inspected'> = async (input) => {
  const recording = await recordOnJoint(input);
  if (!input.payload.accepted) {
    await raisePunchItem(
      input.tx,
      shutdownOf(input),
      {
        // The event's own id: one item for one inspection, however often the command is repeated.
        punchId: input.eventId,
        category: 'A',
        text: input.payload.remark ?? 'Faces or bolting rejected',
        jointId: input.subjectId,
        packId: null,
        systemId: null,
        owner: null,
      },
      { at: input.workTime, by: input.actor.personId },
    );
  }
  return recording;
};

const jointListed: Decide<'joint-listed'> = async (input) => {
  const shutdown = shutdownOf(input);
  requireAllowed(input.actor, 'list-joints', {
    shutdownId: shutdown.shutdownId,
    areaId: input.payload.whereabouts.areaId,
  });
  return beginJoints(input, [{ jointId: input.subjectId, payload: input.payload }]);
};

const jointFound: Decide<'joint-found'> = async (input) => {
  const shutdown = shutdownOf(input);
  requireAllowed(input.actor, 'find-joint', { shutdownId: shutdown.shutdownId, areaId: input.payload.areaId });
  return beginJoints(input, [{ jointId: input.subjectId, payload: input.payload }]);
};

/** The decisions of joints and makes: what the register lists, and all the work on it. */
export const jointDecisions: Decisions<JointEvent | 'joint-listed' | 'joint-found' | 'joint-merged'> = {
  ...(Object.fromEntries(
    JOINT_EVENTS.map((type) => [type, (input: DecisionInput) => recordOnJoint(input)]),
  ) as unknown as Decisions<JointEvent>),
  'leak-found': leakFound,
  'faces-inspected': facesInspected,
  'joint-listed': jointListed,
  'joint-found': jointFound,
  'joint-merged': jointMerged,
};

export type JointListed = Payload<'joint-listed'>;
