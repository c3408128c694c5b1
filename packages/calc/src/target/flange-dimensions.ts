import type { FlangeStressRequest } from '../code-loads/flange-stress-request.ts';
import type { Flange } from '../flanges/find-flange.ts';
import { weldNeckHub } from '../flanges/hub-dimensions.ts';
import { CalcRefusal } from '../refusal.ts';
import type { FlangeStrengthInput, TargetRequest } from './request.ts';

export type FlangeDimensions = Pick<
  FlangeStressRequest,
  'kind' | 'outsideDiameter_mm' | 'insideDiameter_mm' | 'boltCircle_mm' | 'thickness_mm' | 'hub'
>;

/** Weld neck hub of the standard, its thick end at the back of the flange; undefined where the tables have none. */
function tabulatedHub(flange: Flange) {
  try {
    const hub = weldNeckHub(flange);
    return {
      insideDiameter_mm: hub.bore_mm,
      hub: {
        length_mm: hub.lengthThroughHub_mm - hub.flangeThickness_mm,
        smallThickness_mm: hub.wall_mm,
        largeThickness_mm: (hub.hubBase_mm - hub.bore_mm) / 2,
      },
    };
  } catch (error) {
    if (error instanceof CalcRefusal) return undefined;
    throw error;
  }
}

function fromStandard(strength: FlangeStrengthInput, flange: Flange) {
  // The ring of the code has no raised face; EN 1092-1 counts the face in its thickness.
  const face_mm = flange.thicknessIncludesRaisedFace ? flange.raisedFaceHeight_mm : 0;
  return {
    outsideDiameter_mm: flange.outsideDiameter_mm,
    boltCircle_mm: flange.boltCircle_mm,
    thickness_mm: flange.thickness_mm - face_mm,
    ...(strength.kind === 'integral' ? tabulatedHub(flange) : {}),
  };
}

/**
 * Dimensions of the flange for the stresses of the code: entered ones first, then those of its standard.
 * @throws CalcRefusal `flange-dimensions-missing` for each that nobody gives
 */
export function flangeDimensions(
  strength: FlangeStrengthInput,
  flange: TargetRequest['flange'],
  found: Flange | undefined,
): FlangeDimensions {
  const custom = 'custom' in flange ? flange.custom : undefined;
  const known: Partial<FlangeDimensions> = found === undefined ? {} : fromStandard(strength, found);
  const dimensions = {
    outsideDiameter_mm: strength.outsideDiameter_mm ?? known.outsideDiameter_mm,
    insideDiameter_mm: strength.insideDiameter_mm ?? known.insideDiameter_mm,
    boltCircle_mm: strength.boltCircle_mm ?? custom?.boltCircle_mm ?? known.boltCircle_mm,
    thickness_mm: strength.thickness_mm ?? custom?.thickness_mm ?? known.thickness_mm,
  };
  const { outsideDiameter_mm, insideDiameter_mm, boltCircle_mm, thickness_mm } = dimensions;
  const hub = strength.hub ?? known.hub;
  const missing: string[] = Object.entries(dimensions).flatMap(([name, value]) => (value === undefined ? [name] : []));
  if (strength.kind === 'integral' && hub === undefined) missing.push('hub');
  if (
    outsideDiameter_mm === undefined ||
    insideDiameter_mm === undefined ||
    boltCircle_mm === undefined ||
    thickness_mm === undefined ||
    missing.length > 0
  ) {
    throw new CalcRefusal(
      missing.map((name) => ({
        path: `flange.strength.${name}`,
        code: 'flange-dimensions-missing',
        message: `The flange stresses need ${name}, which no table gives for this flange. Take it from the drawing.`,
      })),
    );
  }
  return {
    kind: strength.kind,
    outsideDiameter_mm,
    insideDiameter_mm,
    boltCircle_mm,
    thickness_mm,
    ...(hub === undefined ? {} : { hub }),
  };
}
