import type { Payload, TargetPreview } from '@seatwell/contract';
import { Problem } from '../../platform/errors/problem.ts';
import { previewTarget } from '../engineering/compute-target.ts';
import type { Reading } from '../reading/reading.ts';
import { FactsLoader } from './facts.ts';
import { jointState } from './joint-page.ts';

/**
 * The target that a choice leads to, with its whole working; nothing is recorded. It is open to all who may read the
 * joint: its window is what the target on the joint page is explained by.
 * @throws Problem `calculation-refused` naming what is missing, as approval would
 */
export async function targetPreviewOf(
  reading: Reading,
  { jointId, makeId }: { readonly jointId: string; readonly makeId: string },
  choice: Payload<'target-approved'>,
): Promise<TargetPreview> {
  const { db, siteId, shutdownId } = reading;
  const joint = await jointState(reading, jointId);
  const make = joint.makes.find((each) => each.makeId === makeId);
  if (!make) throw new Problem('not-found', `${joint.tag} has no make ${makeId}.`);
  const facts = new FactsLoader(db, siteId, shutdownId);
  const { evidence, answer } = await previewTarget(facts, joint, make, choice);
  return { target: evidence as unknown as TargetPreview['target'], answer: answer as TargetPreview['answer'] };
}
