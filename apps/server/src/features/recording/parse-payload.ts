import { type EventType, shutdownPayloads, sitePayloads } from '@seatwell/contract';
import type { ZodType } from 'zod';
import type { ProblemItem } from '../../platform/errors/problem.ts';

const SCHEMAS: Readonly<Record<EventType, ZodType>> = { ...shutdownPayloads, ...sitePayloads };

/** A payload that its event's schema does not accept. */
export class EventPayloadError extends Error {
  readonly items: readonly ProblemItem[];
  constructor(message: string, items: readonly ProblemItem[]) {
    super(message);
    this.items = items;
  }
}

/** The payload as its event's schema reads it. @throws EventPayloadError naming each field that is wrong */
export function parsePayload(type: EventType, payload: unknown): unknown {
  const parsed = SCHEMAS[type].safeParse(payload);
  if (parsed.success) return parsed.data;
  const items = parsed.error.issues.map((issue) => ({
    path: issue.path.join('.'),
    code: issue.code ?? 'invalid',
    message: issue.message,
  }));
  throw new EventPayloadError(items.map((item) => `${item.path}: ${item.message}`).join('; '), items);
}
