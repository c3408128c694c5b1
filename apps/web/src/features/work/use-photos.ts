import { useState } from 'react';
import { request } from '../../app/api-client.ts';

interface Held {
  readonly photo: File;
  readonly hash: string | null;
}

/** Photos of a form: each is sent as soon as it is taken, and named by its hash. */
export function usePhotos() {
  const [held, setHeld] = useState<readonly Held[]>([]);
  const [error, setError] = useState<unknown>();

  const send = async (photo: File) => {
    const body = new FormData();
    body.append('file', photo);
    try {
      const { hash } = await request<{ hash: string }>('/files', { method: 'POST', body });
      setHeld((current) => current.map((each) => (each.photo === photo ? { photo, hash } : each)));
      setError(undefined);
    } catch (failure) {
      setError(failure);
    }
  };
  return {
    photos: held.map((each) => each.photo),
    /** hash of the first photo; null when there is none */
    hash: held[0]?.hash ?? null,
    hashes: held.flatMap((each) => (each.hash === null ? [] : [each.hash])),
    /** a photo is there that the server has not got yet */
    sending: held.some((each) => each.hash === null),
    error,
    add: (photos: readonly File[]) => {
      setHeld((current) => [...current, ...photos.map((photo) => ({ photo, hash: null }))]);
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
