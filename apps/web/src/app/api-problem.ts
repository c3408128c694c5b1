import type { ProblemDetails, ProblemItem } from '../ui/problem.tsx';

/** One entry of problem+json `errors`, with what some codes add to it. */
export interface ApiProblemItem {
  readonly path?: string;
  readonly code?: string;
  readonly message: string;
  readonly limit?: unknown;
  readonly [more: string]: unknown;
}

/** A refusal of the server (RFC 9457), or the want of an answer (`no-answer`). */
export class ApiProblem extends Error implements ProblemDetails {
  /** the stable end of the problem's type, for example `rules-not-met` */
  readonly code: string;
  readonly status: number;
  readonly title: string;
  readonly detail: string;
  readonly items: readonly ApiProblemItem[];

  constructor(body: {
    code: string;
    status: number;
    title: string;
    detail: string;
    items?: readonly ApiProblemItem[];
  }) {
    super(`${body.title}: ${body.detail}`);
    this.name = 'ApiProblem';
    this.code = body.code;
    this.status = body.status;
    this.title = body.title;
    this.detail = body.detail;
    this.items = body.items ?? [];
  }

  /** what the part `Problem` shows: all that is wrong at once, each with its remedy and who can clear it */
  get errors(): readonly ProblemItem[] {
    return this.items.map((item) => ({
      code: item.code,
      path: typeof item.joint === 'string' ? item.joint : item.path,
      message: typeof item.joint === 'string' ? `${item.joint}: ${item.message}` : item.message,
      remedy: typeof item.remedy === 'string' ? item.remedy : undefined,
      who: typeof item.who === 'string' ? item.who : undefined,
    }));
  }
}

const typePrefix = 'urn:seatwell:problem:';

/** Reads a refusal; what is no problem+json (a proxy's page) is shown with its status. */
export async function problemOf(response: Response): Promise<ApiProblem> {
  return problemIn(await response.json().catch(() => null), response);
}

/** A refusal as it stands in a body: an answer of its own, or what a job ended with. */
export function problemIn(
  body: unknown,
  response: { readonly status: number; readonly statusText: string },
): ApiProblem {
  const read = typeof body === 'object' && body !== null ? (body as Record<string, unknown>) : {};
  const type = typeof read.type === 'string' ? read.type : '';
  return new ApiProblem({
    code: type.startsWith(typePrefix) ? type.slice(typePrefix.length) : `http-${response.status}`,
    status: response.status,
    title: typeof read.title === 'string' ? read.title : `${response.status} ${response.statusText}`,
    detail: typeof read.detail === 'string' ? read.detail : '',
    items: Array.isArray(read.errors) ? (read.errors as ApiProblemItem[]) : [],
  });
}

/** Whether the session is missing or has ended. */
export function isSessionEnd(error: unknown): boolean {
  return error instanceof ApiProblem && error.code === 'not-signed-in';
}
