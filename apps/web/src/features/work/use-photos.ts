import { useState } from 'react';
import { ApiProblem } from '../../app/api-problem.ts';
import { keepPhoto } from '../../offline/device-store.ts';
import { sendPhoto } from '../../offline/send-fact.ts';

interface Held {
  readonly photo: File;
  /** under which the server has it, or, without signal, under which this device keeps it for the outbox */
  readonly hash: string | null;
  readonly here: boolean;
}

/** Hash of a file as it was taken; null where the browser reckons none (plain http on a network). */
async function hashOf(file: Blob): Promise<string | null> {
  if (!globalThis.crypto?.subtle) return null;
  const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Photos of a form: each is sent as soon as it is taken; without signal it waits on the device with its fact. */
export function usePhotos() {
  const [held, setHeld] = useState<readonly Held[]>([]);
  const [error, setError] = useState<unknown>();

  const settle = (photo: File, more: Partial<Held>) =>
    setHeld((current) => current.map((each) => (each.photo === photo ? { ...each, ...more } : each)));
  const send = async (photo: File) => {
    try {
      settle(photo, { hash: await sendPhoto(photo), here: false });
      setError(undefined);
    } catch (failure) {
      if (!(await keptHere(photo, failure))) setError(failure);
    }
  };
  const keptHere = async (photo: File, failure: unknown): Promise<boolean> => {
    const silent = failure instanceof ApiProblem && failure.code === 'no-answer';
    const hash = silent ? await hashOf(photo).catch(() => null) : null;
    if (hash === null) return false;
    try {
      await keepPhoto({ hash, file: photo, stored: null });
    } catch {
      return false;
    }
    settle(photo, { hash, here: true });
    return true;
  };
  return {
    photos: held.map((each) => each.photo),
    /** hash of the first photo; null when there is none */
    hash: held[0]?.hash ?? null,
    hashes: held.flatMap((each) => (each.hash === null ? [] : [each.hash])),
    /** a photo is there that neither the server nor this device has kept yet */
    sending: held.some((each) => each.hash === null),
    /** a photo waits on this device */
    here: held.some((each) => each.here),
    error,
    add: (photos: readonly File[]) => {
      setHeld((current) => [...current, ...photos.map((photo) => ({ photo, hash: null, here: false }))]);
      for (const photo of photos) void send(photo);
    },
    remove: (photo: Blob) => {
      setHeld((current) => current.filter((each) => each.photo !== photo));
      setError(undefined);
    },
    again: () => {
      for (const each of held) if (each.hash === null) void send(each.photo);
    },
  };
}
