import type { ProcedureContent, ShutdownPayload, TensionerChoice, TighteningChoice } from '@seatwell/contract';

export type TargetPayload = ShutdownPayload<'target-approved'>;

type Procedure = Pick<ProcedureContent, 'pattern' | 'method'>;

/** What the engineer has chosen so far. */
export interface TargetDraft {
  readonly basis: TargetPayload['basis'];
  readonly gasketDataId: string;
  readonly lubricantId: string;
  /** MPa; undefined = what the procedure and the window give */
  readonly boltStress_MPa: number | undefined;
  readonly acceptedShortfall: string;
  /** by the pattern of the procedure, or with computed loads */
  readonly way: 'pattern' | 'computed-loads';
  /** division of the wrench, N·m */
  readonly toolDivision_Nm: number | undefined;
  /** most set values in a pass */
  readonly setValues: number;
  /** the tensioner that the pressures are for; '' = none */
  readonly tensionerId: string;
  /** division of the pump's gauge, MPa */
  readonly gaugeDivision_MPa: number | undefined;
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
  way: 'pattern',
  toolDivision_Nm: undefined,
  setValues: 3,
  tensionerId: '',
  gaugeDivision_MPa: undefined,
  tableId: '',
  torque_Nm: undefined,
  torqueAsEntered: undefined,
  lubricant: '',
  source: '',
};

export type TargetMissing =
  | 'gasket-data-needed'
  | 'lubricant-needed'
  | 'tool-division-needed'
  | 'tensioner-needed'
  | 'gauge-division-needed'
  | 'table-needed'
  | 'torque-needed'
  | 'source-needed';

/**
 * The payload to preview or approve, or what it still lacks.
 * @param procedure the assigned one, where there is one: its pattern is named, and its method decides about a tensioner
 */
export function targetPayload(
  draft: TargetDraft,
  procedure?: Procedure,
): { payload: TargetPayload } | { missing: TargetMissing } {
  switch (draft.basis) {
    case 'calculated':
      if (draft.gasketDataId === '') return { missing: 'gasket-data-needed' };
      if (draft.lubricantId === '') return { missing: 'lubricant-needed' };
      if (draft.way === 'computed-loads' && draft.toolDivision_Nm === undefined)
        return { missing: 'tool-division-needed' };
      if (procedure?.method === 'tensioner' && draft.tensionerId === '') return { missing: 'tensioner-needed' };
      if (procedure?.method === 'tensioner' && draft.gaugeDivision_MPa === undefined)
        return { missing: 'gauge-division-needed' };
      return {
        payload: {
          basis: 'calculated',
          gasketDataId: draft.gasketDataId,
          lubricantId: draft.lubricantId,
          boltStress_MPa: draft.boltStress_MPa ?? null,
          acceptedShortfall: draft.acceptedShortfall.trim() === '' ? null : draft.acceptedShortfall.trim(),
          tightening: tighteningOf(draft, procedure?.pattern),
          ...tensionerOf(draft, procedure),
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

function tighteningOf(draft: TargetDraft, pattern: Procedure['pattern'] | undefined): TighteningChoice | null {
  const { way, toolDivision_Nm, setValues } = draft;
  if (way === 'computed-loads' && toolDivision_Nm !== undefined) return { way, toolDivision_Nm, setValues };
  return pattern === undefined ? null : { way: 'pattern', pattern };
}

function tensionerOf(
  { tensionerId, gaugeDivision_MPa }: TargetDraft,
  procedure: Procedure | undefined,
): { tensioner?: TensionerChoice } {
  if (procedure?.method !== 'tensioner' || gaugeDivision_MPa === undefined) return {};
  return { tensioner: { toolId: tensionerId, gaugeDivision_MPa } };
}
