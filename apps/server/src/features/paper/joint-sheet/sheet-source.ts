import type { WindowLimit } from '@seatwell/calc';
import type { ProcedureContent, ShutdownSettings } from '@seatwell/contract';
import type { Flag, JointState, MakeState } from '@seatwell/workflow';

/** The procedure revision that a make is assigned to. */
export interface SheetProcedure {
  readonly code: string;
  readonly title: string;
  readonly revision: number;
  readonly approved: boolean;
  readonly superseded: boolean;
  readonly content: ProcedureContent;
}

/** A pump chosen for the sheet: its certificate's pairs and the gauge that is read. */
export interface SheetPump {
  readonly toolTag: string;
  readonly gaugeTag: string;
  readonly pairs: readonly { readonly pressure_MPa: number; readonly torque_Nm: number }[];
  readonly gaugeDivision_MPa: number;
}

/** A photo of the joint: from the register, else as it was found, else as it was last opened. */
export interface SheetPhoto {
  readonly hash: string;
  readonly of: 'joint' | 'found' | 'opened';
}

/** Everything that a joint sheet is made from. */
export interface SheetSource {
  readonly site: string;
  readonly shutdown: string;
  readonly timeZone: string;
  readonly settings: ShutdownSettings;
  /** where the joint is found on the screen: the QR code */
  readonly address: string;
  /** ISO instant */
  readonly printedAt: string;
  readonly joint: JointState;
  readonly make: MakeState;
  readonly area: string | null;
  readonly system: string | null;
  readonly crew: string | null;
  readonly packs: readonly { readonly number: string; readonly role: 'inside' | 'boundary' | 'reinstated' }[];
  readonly procedure: SheetProcedure | null;
  /** of the target, else of the procedure */
  readonly lubricant: { readonly name: string; readonly nutFactor: number; readonly source: string } | null;
  readonly flags: readonly Flag[];
  /** names of the persons that the sheet speaks of; null = erased */
  readonly names: Readonly<Record<string, string | null>>;
  /** limits of the approved target, computed again with the same inputs and version; null where that is not possible */
  readonly window: { readonly lower: readonly WindowLimit[]; readonly upper: readonly WindowLimit[] } | null;
  readonly photo: SheetPhoto | null;
  readonly pump: SheetPump | null;
}
