import type { ShutdownPayload } from '@seatwell/contract';

export type TargetPayload = ShutdownPayload<'target-approved'>;

/** What the engineer has chosen so far. */
export interface TargetDraft {
  readonly basis: TargetPayload['basis'];
  readonly gasketDataId: string;
  readonly lubricantId: string;
  /** MPa; undefined = what the procedure and the window give */
  readonly boltStress_MPa: number | undefined;
  readonly acceptedShortfall: string;
  readonly tableId: string;
  /** N·m */
  readonly torque_Nm: number | undefined;
  readonly torqueAsEntered: { readonly value: number; readonly unit: string } | undefined;
  readonly lubricant: string;
  readonly source: string;
}

export const emptyTarget: TargetDraft = {
  basis: 'calculated',
  gasketDataId: '',
  lubricantId: '',
  boltStress_MPa: undefined,
  acceptedShortfall: '',
  tableId: '',
  torque_Nm: undefined,
  torqueAsEntered: undefined,
  lubricant: '',
  source: '',
};

export type TargetMissing =
  | 'gasket-data-needed'
  | 'lubricant-needed'
  | 'table-needed'
  | 'torque-needed'
  | 'source-needed';

/** The payload to preview or approve, or what it still lacks. */
export function targetPayload(draft: TargetDraft): { payload: TargetPayload } | { missing: TargetMissing } {
  switch (draft.basis) {
    case 'calculated':
      if (draft.gasketDataId === '') return { missing: 'gasket-data-needed' };
      if (draft.lubricantId === '') return { missing: 'lubricant-needed' };
      return {
        payload: {
          basis: 'calculated',
          gasketDataId: draft.gasketDataId,
          lubricantId: draft.lubricantId,
          boltStress_MPa: draft.boltStress_MPa ?? null,
          acceptedShortfall: draft.acceptedShortfall.trim() === '' ? null : draft.acceptedShortfall.trim(),
        },
      };
    case 'target-table':
      if (draft.tableId === '') return { missing: 'table-needed' };
      return { payload: { basis: 'target-table', tableId: draft.tableId } };
    case 'makers-torque':
      if (draft.torque_Nm === undefined || draft.torqueAsEntered === undefined) return { missing: 'torque-needed' };
      if (draft.source.trim() === '') return { missing: 'source-needed' };
      if (draft.lubricant.trim() === '') return { missing: 'lubricant-needed' };
      return {
        payload: {
          basis: 'makers-torque',
          torque_Nm: draft.torque_Nm,
          torqueAsEntered: draft.torqueAsEntered,
          lubricant: draft.lubricant.trim(),
          source: draft.source.trim(),
        },
      };
  }
}
