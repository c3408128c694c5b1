import { findNut } from '../bolting/nuts.ts';
import { refuse } from '../refusal.ts';
import { areasOf } from '../threads/geometry.ts';
import type { TorqueModel } from './torque.ts';

/** Friction of the lubricant as the procedure states it; there is no default. */
export type Lubricant =
  | { readonly nutFactor: number; readonly source: string }
  | { readonly threadFriction: number; readonly bearingFriction: number; readonly source: string };

const COS_HALF_ANGLE = Math.cos(Math.PI / 6);

/** What the nut turns on: the flange around its hole, or a washer. */
export interface NutSeat {
  readonly hole_mm?: number | undefined;
  readonly washer?: { readonly insideDiameter_mm: number; readonly outsideDiameter_mm: number } | undefined;
}

/**
 * Bearing face of the nut: across flats outside (PCC-1 takes 1.5 D + 1/8 in), hole of the flange inside. A washer
 * under it stays still: its bore is the inside, and its outside where it is smaller than the nut.
 */
export function bearingFace(thread: string, { hole_mm, washer }: NutSeat) {
  const { nominalDiameter_mm } = areasOf(thread);
  const acrossFlats_mm = findNut({ thread })?.acrossFlats_mm ?? 1.5 * nominalDiameter_mm + 3.175;
  return {
    bearingOuterDiameter_mm: Math.min(acrossFlats_mm, washer?.outsideDiameter_mm ?? acrossFlats_mm),
    bearingInnerDiameter_mm: washer?.insideDiameter_mm ?? hole_mm ?? nominalDiameter_mm * 1.1,
  };
}

/** The torque model of a lubricant on a thread. */
export function torqueModelOf(lubricant: Lubricant, thread: string, seat: NutSeat): TorqueModel {
  if ('nutFactor' in lubricant) return { model: 'nut-factor', nutFactor: lubricant.nutFactor };
  return {
    model: 'friction',
    threadFriction: lubricant.threadFriction,
    bearingFriction: lubricant.bearingFriction,
    ...bearingFace(thread, seat),
  };
}

/**
 * Thread friction that belongs to a lubricant. From a nut factor it follows with equal friction in thread and
 * bearing: K·d = ½·(P/π + µ·d2/cos 30° + µ·De).
 * @throws CalcRefusal `friction-impossible`
 */
export function threadFrictionOf(lubricant: Lubricant, thread: string, seat: NutSeat): number {
  if (!('nutFactor' in lubricant)) return lubricant.threadFriction;
  const { nominalDiameter_mm, pitch_mm, pitchDiameter_mm } = areasOf(thread);
  const { bearingOuterDiameter_mm, bearingInnerDiameter_mm } = bearingFace(thread, seat);
  const lever_mm = pitchDiameter_mm / COS_HALF_ANGLE + (bearingOuterDiameter_mm + bearingInnerDiameter_mm) / 2;
  const friction = (2 * lubricant.nutFactor * nominalDiameter_mm - pitch_mm / Math.PI) / lever_mm;
  if (friction < 0) {
    refuse(
      'lubricant.nutFactor',
      'friction-impossible',
      `A nut factor of ${lubricant.nutFactor} on ${thread} is less than the wedge of the thread alone. Check the lubricant’s data.`,
      pitch_mm / (2 * Math.PI * nominalDiameter_mm),
    );
  }
  return friction;
}
