import { ERROR_CATALOGUE, type ErrorCode } from './catalogue.ts';

/** One thing that was wrong, where, and what to do about it. */
export interface ProblemItem {
  readonly path: string;
  readonly code: string;
  readonly message: string;
  readonly limit?: unknown;
  readonly [more: string]: unknown;
}

/** An error that is part of the interface (RFC 9457). `detail` names the value, the limit and the remedy. */
export class Problem extends Error {
  readonly code: ErrorCode;
  readonly items: readonly ProblemItem[];
  readonly more: Readonly<Record<string, unknown>>;

  constructor(
    code: ErrorCode,
    detail: string,
    items: readonly ProblemItem[] = [],
    more: Readonly<Record<string, unknown>> = {},
  ) {
    super(detail);
    this.name = 'Problem';
    this.code = code;
    this.items = items;
    this.more = more;
  }

  get status(): number {
    return ERROR_CATALOGUE[this.code].status;
  }

  /** The problem+json body. */
  body(instance: string): Record<string, unknown> {
    return {
      type: `urn:seatwell:problem:${this.code}`,
      title: ERROR_CATALOGUE[this.code].title,
      status: this.status,
      detail: this.message,
      instance,
      errors: this.items,
      ...this.more,
    };
  }
}
