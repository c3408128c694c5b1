import { keptHeader } from '../offline/kept-reads.ts';
import { noteKept } from '../offline/kept-since.ts';
import { ApiProblem, isSessionEnd, problemOf } from './api-problem.ts';
import { noteServerClock } from './clock-offset.ts';
import { sayEnded } from './session-end.ts';

export interface ApiRequest {
  readonly method?: 'GET' | 'POST' | 'PUT' | 'DELETE';
  /** sent as JSON, unless it is form data or a file */
  readonly body?: unknown;
  readonly signal?: AbortSignal | undefined;
}

/**
 * Asks the API.
 * @param path below /api/v1, for example `/session`
 * @throws ApiProblem with the server's refusal, or with the code `no-answer` when there was none
 */
export async function request<Answer>(
  path: string,
  { method = 'GET', body, signal }: ApiRequest = {},
): Promise<Answer> {
  const sentAt_ms = Date.now();
  const response = await send(path, { method, body, signal });
  const readAt = response.headers.get(keptHeader);
  noteKept(readAt);
  // What comes from this device says nothing of the server's clock.
  if (readAt === null) noteServerClock(response, sentAt_ms, Date.now());
  if (!response.ok) {
    const problem = await problemOf(response);
    if (isSessionEnd(problem)) sayEnded();
    throw problem;
  }
  if (response.status === 204) return undefined as Answer;
  return (await response.json()) as Answer;
}

async function send(path: string, { method, body, signal }: ApiRequest): Promise<Response> {
  const isRaw = body instanceof FormData || body instanceof Blob;
  try {
    return await fetch(`/api/v1${path}`, {
      method: method ?? 'GET',
      credentials: 'same-origin',
      headers: {
        accept: 'application/json',
        ...(body === undefined || isRaw ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { body: isRaw ? body : JSON.stringify(body) }),
      ...(signal ? { signal } : {}),
    });
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') throw error;
    throw noAnswer();
  }
}

function noAnswer(): ApiProblem {
  return new ApiProblem({
    code: 'no-answer',
    status: 0,
    title: 'The server does not answer',
    detail: 'Look at the connection of this device, then try again. What you entered is still here.',
  });
}

/** Path with the values that are set as its query; lists are repeated. */
export function withQuery(
  path: string,
  query: Readonly<Record<string, string | number | boolean | readonly string[] | null | undefined>>,
): string {
  const search = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) {
    if (value === undefined || value === null || value === '') continue;
    if (Array.isArray(value)) for (const each of value as readonly string[]) search.append(name, each);
    else search.set(name, String(value));
  }
  const written = search.toString();
  return written === '' ? path : `${path}?${written}`;
}
