import { z } from 'zod';
import { TOOL_KINDS } from '../code-lists.ts';
import { procedureContent, reach, sitePayloads } from '../events/index.ts';
import { day, id, instant, qualifiedFor, role, stage } from '../primitives.ts';
import { allowedAction, personRef } from './common.ts';

const qualificationRow = z.object({
  qualificationId: id,
  qualifiedFor: z.array(qualifiedFor),
  validFrom: day,
  validThrough: day,
  scheme: z.string(),
  certificate: z.string().nullable(),
  withdrawnAt: instant.nullable(),
  state: z.enum(['in-date', 'lapsing', 'lapsed', 'not-yet', 'withdrawn']),
});
export type QualificationRow = z.infer<typeof qualificationRow>;

export const personRow = z.object({
  personId: id,
  /** null = erased */
  name: z.string().nullable(),
  company: z.string(),
  badge: z.string().nullable(),
  trade: z.string().nullable(),
  erasedAt: instant.nullable(),
  qualifications: z.array(qualificationRow),
  /** crews in every shutdown of the site */
  crews: z.array(z.object({ crewId: id, code: z.string(), shutdownId: id, shutdown: z.string() })),
  hasAccount: z.boolean(),
});
export type PersonRow = z.infer<typeof personRow>;

/** `GET /api/v1/people`, `GET /api/v1/people/:personId` */
export const peopleAnswer = z.object({ rows: z.array(personRow), actions: z.array(allowedAction) });
export const personPage = personRow.extend({
  talks: z.array(z.object({ talkId: id, code: z.string(), revision: z.int(), heldAt: instant, shutdownId: id })),
  actions: z.array(allowedAction),
});
export type PeopleAnswer = z.infer<typeof peopleAnswer>;
export type PersonPage = z.infer<typeof personPage>;

/** `GET /api/v1/accounts` */
export const accountsAnswer = z.object({
  rows: z.array(
    z.object({
      accountId: id,
      person: personRef,
      email: z.string(),
      closedAt: instant.nullable(),
      lockedUntil: instant.nullable(),
      grants: z.array(
        z.object({
          grantId: id,
          role,
          reach,
          startsOn: day.nullable(),
          endsOn: day.nullable(),
          endedAt: instant.nullable(),
          inForce: z.boolean(),
        }),
      ),
    }),
  ),
  actions: z.array(allowedAction),
});
export type AccountsAnswer = z.infer<typeof accountsAnswer>;

const calibrationRow = z.object({
  calibrationId: id,
  calibratedOn: day,
  validThrough: day,
  certificateNumber: z.string(),
  certificate: z.string().nullable(),
  provisional: z.boolean(),
  clearedAt: instant.nullable(),
  pairs: z.array(z.object({ pressure_MPa: z.number(), torque_Nm: z.number() })),
});

/** `GET /api/v1/tools` */
export const toolsAnswer = z.object({
  rows: z.array(
    z.object({
      toolId: id,
      tag: z.string(),
      kind: z.enum(TOOL_KINDS),
      maker: z.string().nullable(),
      scaleMinimum: z.number().nullable(),
      scaleMaximum: z.number(),
      scaleUnit: z.enum(['N·m', 'MPa', 'mm']),
      scaleDivision: z.number().nullable(),
      /** of a tensioner */
      hydraulicArea_mm2: z.number().nullable(),
      failedOn: day.nullable(),
      /** the one in force today; null = out of calibration */
      inForce: calibrationRow.nullable(),
      state: z.enum(['in-calibration', 'lapsing', 'provisional', 'lapsed', 'never-calibrated', 'failed']),
      calibrations: z.array(calibrationRow),
    }),
  ),
  actions: z.array(allowedAction),
});
export type ToolsAnswer = z.infer<typeof toolsAnswer>;

/** `GET /api/v1/tools/:toolId/joints`: what a tool that was found wrong tightened since its last good calibration */
export const toolJointsAnswer = z.object({
  rows: z.array(
    z.object({
      shutdownId: id,
      shutdown: z.string(),
      jointId: id,
      tag: z.string(),
      makeNumber: z.int(),
      stage,
    }),
  ),
});
export type ToolJointsAnswer = z.infer<typeof toolJointsAnswer>;
export type ToolRow = ToolsAnswer['rows'][number];

/** `GET /api/v1/procedures`: every revision, newest first within a procedure */
export const proceduresAnswer = z.object({
  rows: z.array(
    z.object({
      procedureId: id,
      revision: z.int(),
      code: z.string(),
      title: z.string(),
      content: procedureContent,
      contentHash: z.string(),
      draftedAt: instant,
      approvedAt: instant.nullable(),
      approvedBy: personRef.nullable(),
      supersededAt: instant.nullable(),
      state: z.enum(['draft', 'approved', 'superseded']),
      actions: z.array(allowedAction),
    }),
  ),
  actions: z.array(allowedAction),
});
export type ProceduresAnswer = z.infer<typeof proceduresAnswer>;

const sourced = <T extends z.ZodType>(content: T) =>
  z.object({
    rows: z.array(z.object({ dataId: id, name: z.string(), hash: z.string(), content })),
    actions: z.array(allowedAction),
  });

/** `GET /api/v1/gasket-data`, `/lubricants`, `/maker-torques` */
export const gasketDataAnswer = sourced(sitePayloads['gasket-data-entered']);
export const lubricantsAnswer = sourced(sitePayloads['lubricant-entered']);
export const makerTorquesAnswer = sourced(sitePayloads['maker-torque-entered']);
export type GasketDataAnswer = z.infer<typeof gasketDataAnswer>;
export type LubricantsAnswer = z.infer<typeof lubricantsAnswer>;
export type MakerTorquesAnswer = z.infer<typeof makerTorquesAnswer>;

/** `GET /api/v1/target-tables` */
export const targetTablesAnswer = z.object({
  rows: z.array(
    z.object({
      tableId: id,
      name: z.string(),
      content: sitePayloads['target-table-approved'],
      approvedAt: instant,
      approvedBy: personRef.nullable(),
    }),
  ),
  actions: z.array(allowedAction),
});
export type TargetTablesAnswer = z.infer<typeof targetTablesAnswer>;

/** `GET /api/v1/shutdowns` */
export const shutdownsAnswer = z.object({
  rows: z.array(
    z.object({
      shutdownId: id,
      name: z.string(),
      startsOn: day,
      endsOn: day,
      timeZone: z.string(),
      units: z.enum(['SI', 'US']),
      joints: z.int(),
      tight: z.int(),
    }),
  ),
  actions: z.array(allowedAction),
});
export type ShutdownsAnswer = z.infer<typeof shutdownsAnswer>;
