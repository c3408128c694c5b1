import type { ShutdownPayload, TighteningMethod, ToolSetting } from '@seatwell/contract';

/** A pass as it stands on the paper form. */
export interface WrittenPass {
  readonly startedAt: Date;
  readonly endedAt: Date;
  readonly set: ToolSetting;
  readonly toolId: string;
  readonly pumpId: string;
  readonly gaugeId: string;
  readonly outcome: 'finished' | 'interrupted';
  readonly lastBolt: number | undefined;
  readonly boltsDone: number | undefined;
  readonly why: string;
}

type Quantity = 'torque' | 'pressure' | 'gap';

/** What a tool of a method is set to. */
export const SET_QUANTITY = {
  'torque-wrench': 'torque',
  'hydraulic-wrench': 'torque',
  tensioner: 'pressure',
  elongation: 'gap',
} as const satisfies Record<TighteningMethod, Quantity>;

/** The setting as the record keeps it: held in SI, with what was written beside it. */
export function settingOf(quantity: Quantity, held: number, asEntered: ToolSetting['asEntered']): ToolSetting {
  if (quantity === 'torque') return { torque_Nm: held, asEntered };
  return quantity === 'pressure' ? { pressure_MPa: held, asEntered } : { elongation_mm: held, asEntered };
}

const shared = ({ set, toolId, pumpId, gaugeId, startedAt, endedAt }: WrittenPass) => ({
  set,
  tools: { toolId, pumpId: pumpId || null, gaugeId: gaugeId || null },
  startedAt: startedAt.toISOString(),
  endedAt: endedAt.toISOString(),
});

/** @param bolts of the pass when it went to its end */
export function passPayload(written: WrittenPass, pass: number, bolts: number): ShutdownPayload<'pass-recorded'> {
  const left = written.outcome === 'interrupted';
  return {
    ...shared(written),
    pass,
    outcome: written.outcome,
    lastBolt: left ? (written.lastBolt ?? null) : null,
    boltsDone: left ? (written.boltsDone ?? 0) : bolts,
    why: left ? written.why.trim() : null,
    gapsChecked_mm: null,
  };
}

export const roundPayload = (
  written: WrittenPass,
  rounds: number,
  nutMoved: boolean,
): ShutdownPayload<'final-round-recorded'> => ({ ...shared(written), rounds, nutMoved });

export const relaxationPayload = (
  written: WrittenPass,
  nutsMoved: number,
): ShutdownPayload<'relaxation-pass-recorded'> => ({ ...shared(written), nutsMoved });
