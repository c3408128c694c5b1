import type { ToolRow } from '@seatwell/contract';

export const toolStates = ['in-calibration', 'lapsing', 'provisional', 'lapsed', 'never-calibrated', 'failed'] as const;

/** Tools whose tag or maker holds what was typed, in the states asked for. */
export function toolsFound(rows: readonly ToolRow[], typed: string, states: readonly string[]): readonly ToolRow[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return rows.filter((row) => {
    const hay = `${row.tag} ${row.maker ?? ''}`.toLowerCase();
    return words.every((word) => hay.includes(word)) && (states.length === 0 || states.includes(row.state));
  });
}

/** Whether a crew may take the tool now. */
export function isUsable(row: Pick<ToolRow, 'state'>): boolean {
  return row.state === 'in-calibration' || row.state === 'lapsing' || row.state === 'provisional';
}
