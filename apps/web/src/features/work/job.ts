import type { JointPage, MakeAnswer, ShutdownSettings } from '@seatwell/contract';
import type { JointState, MakeState } from '@seatwell/workflow';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams, useSearch } from '@tanstack/react-router';
import { jointQuery, shutdownQuery } from '../../app/reads.ts';
import { useMe } from '../../app/session.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';

/** The joint and the make that is worked on, with what its rules read. */
export interface Job {
  readonly shutdownId: string;
  readonly page: JointPage;
  readonly joint: JointState;
  readonly make: MakeAnswer;
  readonly state: MakeState;
  readonly settings: ShutdownSettings;
  /** crew of the make, and the person who is signed in */
  readonly people: readonly Person[];
}

export interface Person {
  readonly personId: string;
  readonly name: string;
  readonly isMe: boolean;
}

/** The job in the address; null where the joint has no make to work on. */
export function useJob(): Job | null {
  const shutdownId = useShutdownId();
  const { jointId } = useParams({ strict: false });
  const { make: asked } = useSearch({ strict: false }) as { make?: string };
  if (!jointId) throw new Error('useJob needs an address below /joints/:jointId.');
  const { data: page } = useSuspenseQuery(jointQuery(shutdownId, jointId));
  const { data: shutdown } = useSuspenseQuery(shutdownQuery(shutdownId));
  const me = useMe();
  const joint = page.joint as unknown as JointState;
  const make = page.makes.find((each) => each.makeId === (asked ?? page.shownMakeId));
  const state = joint.makes.find((each) => each.makeId === make?.makeId);
  if (!make || !state) return null;
  const crew = make.crewPersons
    .filter((each) => each.personId !== me.personId && each.name !== null)
    .map((each) => ({ personId: each.personId, name: each.name ?? '', isMe: false }));
  const people = [{ personId: me.personId, name: me.name, isMe: true }, ...crew];
  return { shutdownId, page, joint, make, state, settings: shutdown.settings, people };
}
