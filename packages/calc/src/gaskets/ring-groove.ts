import { NOT_NEGATIVE, POSITIVE, requireInRange } from '../checks.ts';
import { findFlange } from '../flanges/find-flange.ts';
import { refuse } from '../refusal.ts';

/** Dimensions of a metal ring as its drawing or standard prints them, with the document they are from. */
export interface EnteredRing {
  readonly pitchDiameter_mm: number;
  readonly width_mm: number;
  readonly source: string;
}

export interface RingJoint {
  /** `R45`; undefined where the flange's table names none. */
  readonly ringNumber?: string;
  readonly contactInside_mm: number;
  readonly contactOutside_mm: number;
  readonly source: string;
}

/**
 * Contact of a ring joint: the ring's number comes from the flange table where it has one, its dimensions are entered.
 *
 * Formula: pitch diameter ∓ width. The code counts an eighth of the width (b0 = w/8, facing `ring-joint`).
 * @param input.ring no dimension of rings or grooves is held here
 * @throws CalcRefusal `ring-groove-data-missing` naming the ring; `ring-impossible`, `source-missing`
 */
export function ringJoint(input: {
  readonly flange?: { readonly standard: string; readonly size: string; readonly rating: string };
  readonly ring?: EnteredRing;
}): RingJoint {
  const { flange, ring } = input;
  const ringNumber = flange === undefined || flange.standard === 'custom' ? undefined : findFlange(flange).ringGroove;
  if (ring === undefined) {
    const name = ringNumber === undefined ? 'this ring' : `ring ${ringNumber}`;
    refuse(
      'ring',
      'ring-groove-data-missing',
      `No dimensions of ${name} are held here. Enter its pitchDiameter_mm and width_mm with their source (ASME B16.20 or the drawing).`,
    );
  }
  requireInRange([
    ['ring.pitchDiameter_mm', ring.pitchDiameter_mm, POSITIVE],
    ['ring.width_mm', ring.width_mm, POSITIVE],
  ]);
  if (ring.source.trim() === '') {
    refuse('ring.source', 'source-missing', 'The dimensions of the ring have no source. Name the document.');
  }
  if (ring.width_mm >= ring.pitchDiameter_mm) {
    refuse(
      'ring.width_mm',
      'ring-impossible',
      `A ring of ${ring.width_mm} mm width does not fit a pitch diameter of ${ring.pitchDiameter_mm} mm. Check both.`,
      ring.pitchDiameter_mm,
    );
  }
  return {
    ...(ringNumber === undefined ? {} : { ringNumber }),
    contactInside_mm: ring.pitchDiameter_mm - ring.width_mm,
    contactOutside_mm: ring.pitchDiameter_mm + ring.width_mm,
    source: ring.source,
  };
}

/** A groove as measured, against the tolerances that are entered with their source. */
export interface GrooveReading {
  readonly what: 'depth' | 'width' | 'pitch-diameter' | 'flank-angle';
  readonly value: number;
  readonly nominal: number;
  readonly minus: number;
  readonly plus: number;
  readonly source: string;
}

/**
 * Judges measured dimensions of a ring groove against entered ones; nothing about grooves is held here.
 * @throws CalcRefusal `ring-groove-data-missing` for a reading without source, `out-of-range`
 */
export function judgeRingGroove(readings: readonly GrooveReading[]): readonly {
  readonly what: GrooveReading['what'];
  readonly accepted: boolean;
  readonly least: number;
  readonly most: number;
  readonly source: string;
}[] {
  return readings.map(({ what, value, nominal, minus, plus, source }, i) => {
    requireInRange([
      [`readings.${i}.value`, value, NOT_NEGATIVE],
      [`readings.${i}.nominal`, nominal, POSITIVE],
      [`readings.${i}.minus`, minus, NOT_NEGATIVE],
      [`readings.${i}.plus`, plus, NOT_NEGATIVE],
    ]);
    if (source.trim() === '') {
      refuse(
        `readings.${i}.source`,
        'ring-groove-data-missing',
        `The ${what} of the groove has no sourced nominal and tolerance. Take them from ASME B16.20 or the drawing and name it.`,
      );
    }
    const least = nominal - minus;
    const most = nominal + plus;
    return { what, accepted: value >= least && value <= most, least, most, source };
  });
}
