import { CalcRefusal, gasketDimensions } from '@seatwell/calc';
import { gasketOf, type JointState, type MakeState } from '@seatwell/workflow';

export interface GasketContact {
  readonly contactInside_mm: number;
  readonly contactOutside_mm: number;
}

/**
 * Where the gasket of a make touches the faces: by its contact diameters in the register, else by the table of its
 * standard.
 * @returns null where neither says it
 */
export function gasketContact(joint: JointState, make: MakeState): GasketContact | null {
  const { family, contactInside_mm, contactOutside_mm } = gasketOf(joint, make);
  if (contactInside_mm !== null && contactOutside_mm !== null) return { contactInside_mm, contactOutside_mm };
  try {
    const { standard, size, rating } = joint.specification.flange;
    const found = gasketDimensions({ standard, size, rating, family });
    return { contactInside_mm: found.contactInside_mm, contactOutside_mm: found.contactOutside_mm };
  } catch (error) {
    if (error instanceof CalcRefusal) return null;
    throw error;
  }
}

/** The radial width that the gasket of a make covers, mm; null where it is not known. */
export function seatingWidth_mm(joint: JointState, make: MakeState): number | null {
  const contact = gasketContact(joint, make);
  return contact ? (contact.contactOutside_mm - contact.contactInside_mm) / 2 : null;
}
