import { z } from 'zod';
import { criticality, id, instant, proofWay } from './primitives.ts';

/** Field of a register: one of packages/workflow's REGISTER_FIELDS; the server refuses others. */
const field = z.string().max(40);
const name = z.string().max(200);

export const importSheet = z.object({ name: z.string(), hidden: z.boolean() });

/** `POST /imports`: the file is kept, nothing is in the register. */
export const importDraft = z.object({
  importId: id,
  fileName: z.string(),
  size: z.int(),
  format: z.enum(['csv', 'xlsx']),
  sheets: z.array(importSheet),
});
export type ImportDraft = z.infer<typeof importDraft>;

/** Test packs that the file names and the shutdown lacks: a pack cannot be without these. */
export const newPackPlan = z.strictObject({
  way: proofWay.default('hydrotest'),
  medium: z.string().trim().min(1).max(200).default('water'),
  hold_min: z.number().positive().max(10_000).default(30),
  /** for packs whose pressure the file does not say; null = such packs cannot be created */
  pressure_MPa: z.number().positive().max(1000).nullable().default(null),
});

/** name in the file → id of the existing one that it means; null = create it */
const meant = z.record(name, id.nullable()).default({});

/** Body of `PUT /imports/:importId/choices`. */
export const importChoices = z.strictObject({
  sheet: name,
  /** row number in the sheet; null = look for it */
  headerRow: z.int().min(1).max(1_000_000).nullable().default(null),
  /** field → column (0-based); null = as remembered for these headers, or guessed */
  mapping: z.record(field, z.int().min(0).max(400)).nullable().default(null),
  options: z
    .strictObject({
      dateOrder: z.enum(['dmy', 'mdy', 'ymd']).optional(),
      decimal: z.enum(['.', ',']).optional(),
      units: z.record(field, z.string().max(20)).optional(),
      defaultStandard: z.enum(['ASME-B16.5', 'ASME-B16.47-A', 'ASME-B16.47-B', 'EN-1092-1']).optional(),
      defaultCriticality: criticality.optional(),
      /** answers to questions, by their key */
      answers: z.record(z.string().max(300), z.union([z.string().max(200), z.number()])).optional(),
    })
    .default({}),
  meant: z.strictObject({ areas: meant, systems: meant, crews: meant, packs: meant }).prefault({}),
  newPacks: newPackPlan.prefault({}),
  /** company of crews that are created; a crew cannot be without one */
  newCrewCompany: z.string().trim().min(1).max(200).nullable().default(null),
});
export type ImportChoices = z.infer<typeof importChoices>;
export type ImportChoicesInput = z.input<typeof importChoices>;

export const IMPORT_OUTCOMES = ['new', 'changed', 'same', 'error'] as const;
export const importOutcome = z.enum(IMPORT_OUTCOMES);
export type ImportOutcome = z.infer<typeof importOutcome>;

const cellText = z.union([z.string(), z.number()]);

/** A cell that is wrong (`error`) or deserves a look (`shown`). */
export const importProblem = z.object({
  rowNumber: z.int(),
  /** letter of the column; empty where no column holds the field */
  column: z.string(),
  field,
  value: z.string(),
  severity: z.enum(['error', 'shown']),
  code: z.string(),
  message: z.string(),
});
export type ImportProblem = z.infer<typeof importProblem>;

export const importDifference = z.object({ field, before: cellText.nullable(), after: cellText.nullable() });
export type ImportDifference = z.infer<typeof importDifference>;

export const importRow = z.object({
  rowNumber: z.int(),
  tag: z.string(),
  outcome: importOutcome,
  jointId: id.nullable(),
  /** stage of a joint that is in the register already */
  stage: z.string().nullable(),
  /** what was read, as text by field */
  values: z.record(z.string(), z.string()),
  /** fields that the sheet leaves empty and that were filled in */
  filled: z.array(field),
  differences: z.array(importDifference),
  problems: z.array(importProblem),
});
export type ImportRow = z.infer<typeof importRow>;

export const importQuestion = z.object({
  key: z.string(),
  field,
  column: z.string(),
  code: z.string(),
  question: z.string(),
  choices: z.array(z.object({ value: cellText, label: z.string() })),
  rows: z.int(),
  firstRows: z.array(z.int()),
  /** the answer given the last time a sheet had these headers; it counts only once it is sent for this file too */
  lastAnswer: cellText.optional(),
});
export type ImportQuestion = z.infer<typeof importQuestion>;

/** An area, system, crew or pack that the file names. */
export const namedThing = z.object({
  name: z.string(),
  rows: z.int(),
  /** the existing one that is meant; null = it would be created */
  id: id.nullable(),
  /** what cannot be created for want of this */
  missing: z.enum(['pressure', 'company']).nullable(),
});
export type NamedThing = z.infer<typeof namedThing>;

const existing = z.array(z.object({ id, name: z.string() }));

/** Result of the job. */
export const importAnswer = z.object({
  eventId: id,
  recordedAt: instant,
  listed: z.int(),
  specified: z.int(),
  assigned: z.int(),
  leftOut: z.int(),
  created: z.object({ areas: z.int(), systems: z.int(), crews: z.int(), packs: z.int() }),
});
export type ImportAnswer = z.infer<typeof importAnswer>;

export const importPreview = z.object({
  importId: id,
  /** binds a confirmation to what was seen */
  previewId: id,
  fileName: z.string(),
  choices: importChoices,
  mappedBy: z.enum(['chosen', 'remembered', 'guessed']),
  /** first rows of the sheet as they stand there, to point at the header */
  top: z.array(z.object({ rowNumber: z.int(), cells: z.array(z.string()) })),
  columns: z.array(
    z.object({
      column: z.int(),
      letter: z.string(),
      header: z.string(),
      field: field.nullable(),
      confidence: z.number(),
      samples: z.array(z.string()),
      /** how its cells are understood, where that is not plain: unit, system of sizes, order of dates */
      understoodAs: z.string().nullable(),
    }),
  ),
  counts: z.object({
    rows: z.int(),
    new: z.int(),
    changed: z.int(),
    same: z.int(),
    error: z.int(),
    /** rows with a note that stops nothing */
    noted: z.int(),
  }),
  questions: z.array(importQuestion),
  named: z.object({
    areas: z.array(namedThing),
    systems: z.array(namedThing),
    crews: z.array(namedThing),
    packs: z.array(namedThing),
  }),
  existing: z.object({ areas: existing, systems: existing, crews: existing, packs: existing }),
  notes: z.array(z.object({ cells: z.string(), code: z.string(), message: z.string() })),
  /** why it cannot be confirmed as it is; rows in error stop nothing when they are left out */
  stops: z.array(z.object({ code: z.string(), message: z.string() })),
  /** the answer of the import that was made of it; null = nothing is recorded yet */
  imported: importAnswer.nullable(),
});
export type ImportPreview = z.infer<typeof importPreview>;

/** `GET /imports/:importId` */
export const importState = importDraft.extend({
  preview: importPreview.nullable(),
  /** the job that reads the file with other choices just now, where the caller has started one */
  readingJobId: id.nullable(),
});
export type ImportState = z.infer<typeof importState>;

/** The answer of `POST /imports/:importId/readings`: the job whose end the preview waits for. */
export const importReading = z.object({ jobId: id });
export type ImportReading = z.infer<typeof importReading>;

export const importProblemsPage = z.object({ rows: z.array(importProblem), next: z.string().nullable() });
export const importRowsPage = z.object({ rows: z.array(importRow), next: z.string().nullable() });
export type ImportProblemsPage = z.infer<typeof importProblemsPage>;
export type ImportRowsPage = z.infer<typeof importRowsPage>;

/** Body of `POST /imports/:importId/confirm`. */
export const importConfirmation = z.strictObject({
  /** UUIDv7 made by the client: the same again gets the same job again */
  eventId: id,
  previewId: id,
  leaveOutRowsInError: z.boolean().default(false),
  deviceTime: instant,
  device: z.string().max(120).nullable().default(null),
});
export type ImportConfirmation = z.infer<typeof importConfirmation>;

export const importStarted = z.object({ jobId: id, eventId: id });
export type ImportStarted = z.infer<typeof importStarted>;
