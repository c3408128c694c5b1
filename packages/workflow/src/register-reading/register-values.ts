import type { GasketFamilyCode, JointKind, WorkScope } from '@seatwell/contract';
import type { DateOrder } from './date.ts';
import type { Facing } from './facing.ts';
import type { ColumnMapping, RegisterField } from './fields.ts';
import type { LookupFlange } from './fill-from-standard.ts';
import type { InsertType } from './kind.ts';
import type { DecimalMark } from './number-text.ts';
import type { Quantity } from './quantity.ts';
import type { RatingSystem } from './rating.ts';
import type { Cell, Choice } from './reading.ts';
import type { SizeSystem } from './size.ts';
import type { FlangeStandard } from './standard.ts';

/** What could be read of one joint. A field that is empty in the sheet, refused or asked is absent. */
export interface RegisterValues {
  tag?: string;
  area?: string;
  system?: string;
  subsystem?: string;
  line?: string;
  location?: string;
  drawing?: string;
  kind?: JointKind;
  /** What an insert joint holds, as far as the kind says it. */
  insert?: InsertType;
  standard?: FlangeStandard;
  size?: string;
  rating?: string;
  facing?: Facing;
  boltCount?: number;
  boltThread?: string;
  boltLength?: Quantity;
  boltGrade?: string;
  gasketFamily?: GasketFamilyCode;
  gasketDetail?: string;
  gasketCount?: number;
  insertThickness?: Quantity;
  medium?: string;
  designPressure?: Quantity;
  designTemperature?: Quantity;
  testPack?: readonly string[];
  testPressure?: Quantity;
  criticality?: string;
  workScope?: WorkScope;
  plannedDate?: string;
  crew?: string;
  item?: string;
  viewedFrom?: string;
  bolt1At?: string;
  remark?: string;
}

/** A cell that is wrong (`error`: the row cannot be imported) or deserves a look (`shown`). */
export interface RowProblem {
  readonly severity: 'error' | 'shown';
  readonly column: string;
  readonly field: RegisterField;
  readonly value: string;
  readonly code: string;
  readonly message: string;
}

/** A question of one row. An answer goes into `options.answers` under `key`, or under `sharedKey` for all like rows. */
export interface RowAsk {
  readonly field: RegisterField;
  readonly column: string;
  readonly value: string;
  readonly code: string;
  readonly key: string;
  readonly sharedKey?: string;
  readonly question: string;
  readonly choices: readonly Choice[];
}

export interface SheetRow {
  /** The row's number in the sheet, from 1. */
  readonly rowNumber: number;
  readonly cells: readonly Cell[];
}

export interface RowReading {
  readonly rowNumber: number;
  readonly values: RegisterValues;
  /** Fields that the sheet leaves empty and that were filled from the standard or by a plain rule. */
  readonly filled: readonly RegisterField[];
  readonly problems: readonly RowProblem[];
  readonly asks: readonly RowAsk[];
}

export interface RegisterOptions {
  readonly dateOrder?: DateOrder;
  readonly decimal?: DecimalMark;
  readonly sizeSystem?: SizeSystem;
  readonly ratingSystem?: RatingSystem;
  /** Units by field where the header names none; a unit in the cell still goes first. */
  readonly units?: Readonly<Partial<Record<RegisterField, string>>>;
  readonly defaultStandard?: FlangeStandard;
  /** Criticality levels of the shutdown, highest first. */
  readonly criticalityLevels?: readonly string[];
  /** Answers to asks, by their key or shared key. */
  readonly answers?: Readonly<Record<string, string | number>>;
}

export interface RegisterInput {
  /** Rows below the header. */
  readonly rows: readonly SheetRow[];
  readonly mapping: ColumnMapping;
  /** Header texts by column, for units and for what bare sizes mean. */
  readonly headers?: readonly Cell[];
  readonly options?: RegisterOptions;
  readonly lookupFlange?: LookupFlange;
}
