/** How labels lie on an A4 sheet, as the server takes it. */
export interface LabelSizes {
  readonly columns: number;
  readonly rows: number;
  readonly marginX_mm: number;
  readonly marginY_mm: number;
  readonly gapX_mm: number;
  readonly gapY_mm: number;
}

// Common sizes of label sheets on A4; others are entered from the pack.
export const LABEL_SHEETS = {
  cards: { columns: 2, rows: 2, marginX_mm: 10, marginY_mm: 10, gapX_mm: 4, gapY_mm: 5 },
  '2x7': { columns: 2, rows: 7, marginX_mm: 4.65, marginY_mm: 15.15, gapX_mm: 2.5, gapY_mm: 0 },
  '3x8': { columns: 3, rows: 8, marginX_mm: 0, marginY_mm: 0.5, gapX_mm: 0, gapY_mm: 0 },
} as const satisfies Record<string, LabelSizes>;

export type LabelSheet = keyof typeof LABEL_SHEETS | 'own';

export type TypedSizes = { readonly [Name in keyof LabelSizes]: number | undefined };

export const noSizes: TypedSizes = {
  columns: undefined,
  rows: undefined,
  marginX_mm: undefined,
  marginY_mm: undefined,
  gapX_mm: 0,
  gapY_mm: 0,
};

/** Sizes that were typed in, once all are there. */
export function completeSizes(typed: TypedSizes): LabelSizes | undefined {
  return Object.values(typed).some((value) => value === undefined) ? undefined : (typed as LabelSizes);
}
