import type { z } from 'zod';
import { itemEvents, registerEvents } from './register-events.ts';
import { shutdownEvents } from './shutdown-events.ts';
import { siteEvents } from './site-events.ts';
import { amendmentEvents, packEvents, workEvents } from './work-events.ts';

/** Payloads of the shutdown stream by event type: the one definition of what each event says. */
export const shutdownPayloads = {
  ...shutdownEvents,
  ...registerEvents,
  ...itemEvents,
  ...workEvents,
  ...packEvents,
  ...amendmentEvents,
} as const;

/** Payloads of the site stream by event type. */
export const sitePayloads = siteEvents;

export type ShutdownEventType = keyof typeof shutdownPayloads;
export type SiteEventType = keyof typeof sitePayloads;
export type EventType = ShutdownEventType | SiteEventType;

export type ShutdownPayload<T extends ShutdownEventType> = z.infer<(typeof shutdownPayloads)[T]>;
export type SitePayload<T extends SiteEventType> = z.infer<(typeof sitePayloads)[T]>;
export type Payload<T extends EventType> = T extends ShutdownEventType
  ? ShutdownPayload<T>
  : T extends SiteEventType
    ? SitePayload<T>
    : never;

export * from './joint-specification.ts';
export { type MakePlan, makePlan } from './register-events.ts';
export {
  criticalityDemand,
  type ShutdownSettings,
  shutdownSettings,
} from './shutdown-events.ts';
export {
  type Coverage,
  type ProcedureBolts,
  type ProcedureContent,
  procedureContent,
  type Reach,
  reach,
} from './site-events.ts';
export {
  alignmentReadings,
  faceReading,
  type TensionerChoice,
  type TighteningChoice,
  type ToolSetting,
  tighteningChoice,
  toolSetting,
} from './work-events.ts';
