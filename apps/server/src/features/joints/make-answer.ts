import type { MakeAnswer } from '@seatwell/contract';
import {
  demandedLevel,
  eventKind,
  facesOf,
  flagsOf,
  gasketOf,
  type JointState,
  levelDueNow,
  type MakeState,
  overtakenBy,
  waitsFor,
} from '@seatwell/workflow';
import type { Names } from '../reading/names.ts';
import { crewRefOf, type Places, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { restartOf } from '../reading/restart.ts';
import { reachOf } from './decide-on-makes.ts';
import type { FactsLoader } from './facts.ts';
import { makeActions } from './make-actions.ts';
import type { assignedProcedures, PackOfMake } from './make-extras.ts';
import { inputsHashNow } from './target-inputs.ts';

/** What the makes of a joint share on its page. */
export interface Around {
  readonly facts: FactsLoader;
  readonly places: Places;
  readonly names: Names;
  readonly packs: ReadonlyMap<string, PackOfMake>;
  readonly procedures: Awaited<ReturnType<typeof assignedProcedures>>;
  readonly unclosedPunch: Readonly<Partial<Record<'A' | 'B' | 'C', number>>>;
}

const procedureKey = (make: MakeState): string | null =>
  make.procedure ? `${make.procedure.procedureId} ${make.procedure.revision}` : null;

/** One make of the joint page: where it stands, what is beside it, and what the caller may record. */
export async function makeAnswer(
  reading: Reading,
  around: Around,
  joint: JointState,
  make: MakeState,
): Promise<MakeAnswer> {
  const { shutdown, shutdownId, now, actor } = reading;
  const { facts, places, names } = around;
  const { settings } = shutdown;
  const procedure = make.procedure ? await facts.procedure(make.procedure.procedureId, make.procedure.revision) : null;
  const lotRejections = await facts.lotRejections(make.lotKey, make.makeId);
  const crew = placeOf(places.crews, make.crewId);
  const flags = flagsOf(joint, make, {
    now,
    settings,
    tools: await facts.tools([...make.toolsUsed, ...make.provisionalTools]),
    targetInputsHashNow: await inputsHashNow(facts, joint, make, procedure),
    unclosedPunch: around.unclosedPunch,
  });
  const checkingLevelNow = levelDueNow(joint, make, settings, lotRejections.length > 0);
  const actions = makeActions(actor, await reachOf(facts, shutdownId, joint, make.makeId), joint, make);
  return {
    makeId: make.makeId,
    number: make.number,
    purpose: make.purpose,
    workScope: make.workScope,
    proof: make.proof,
    stage: make.stage,
    cancelled: make.cancelled,
    overtaken: overtakenBy(joint, make) !== null,
    flags: [...(joint.found ? [{ code: 'found', detail: joint.found.nearest }] : []), ...flags],
    waitsFor: waitsFor(joint, make, settings, now),
    facesToInspect: facesOf(joint, make),
    gasket: gasketOf(joint, make),
    restartFrom: restartOf(make, shutdown, names, now),
    checkingLevel: demandedLevel(joint, make, settings),
    checkingLevelNow,
    lotRejections,
    crew: crewRefOf(places, make.crewId),
    crewPersons: names.all(crew?.personIds ?? []),
    packs: make.packs.map(({ packId, role }) => ({
      packId,
      role,
      number: around.packs.get(packId)?.number ?? '',
      released: around.packs.get(packId)?.released ?? false,
    })),
    procedure: around.procedures.get(procedureKey(make) ?? '') ?? null,
    target: make.target as unknown as MakeAnswer['target'],
    // Fact or decision goes by the level at which the check is due.
    actions: actions.map((each) => ({ ...each, kind: eventKind(each.type, { level: checkingLevelNow }) })),
  };
}
