/** Bending and twisting constants of the equivalent ring that carries the closure of both flanges together. */
export interface RingSection {
  /** Radius of the ring's own line in mm. */
  readonly radius_mm: number;
  /** Bending stiffness of the pair in series, N·mm². */
  readonly bendingStiffness_Nmm2: number;
  /** Twisting stiffness of the pair in series, N·mm². */
  readonly torsionStiffness_Nmm2: number;
}

/**
 * Stiffness of one arc element between two stations.
 *
 * Unknowns of a station: closure W (mm), h·dW/dθ (mm) and ψ = R·φ (mm). Energy of the ring:
 * ½∫[EI/R³ (W″ + ψ)² + GJ/R³ (ψ′ − W′)²] dθ; both strains vanish for a translation and for a rigid tilt.
 * W is cubic Hermite, ψ linear; bending by two Gauss points, twisting by one, which keeps the element
 * from locking.
 *
 * @param section ring constants
 * @param arc_rad angle between the two stations in rad
 * @returns row-major 6 × 6 matrix in N/mm
 */
export function ringElementStiffness(section: RingSection, arc_rad: number): Float64Array {
  const { radius_mm, bendingStiffness_Nmm2, torsionStiffness_Nmm2 } = section;
  const bending = bendingStiffness_Nmm2 / radius_mm ** 3;
  const twisting = torsionStiffness_Nmm2 / radius_mm ** 3;
  const stiffness = new Float64Array(36);
  const add = (strain: readonly number[], weight: number) => {
    for (let i = 0; i < 6; i++) for (let j = 0; j < 6; j++) stiffness[6 * i + j]! += weight * strain[i]! * strain[j]!;
  };
  const h2 = arc_rad * arc_rad;
  for (const x of [0.5 - 0.5 / Math.sqrt(3), 0.5 + 0.5 / Math.sqrt(3)]) {
    const curvature = [(12 * x - 6) / h2, (6 * x - 4) / h2, 1 - x, (6 - 12 * x) / h2, (6 * x - 2) / h2, x];
    add(curvature, 0.5 * arc_rad * bending);
  }
  // At mid-element the Hermite slopes are ±1.5/h for W and −0.25/h for the two scaled slopes.
  const twist = [1.5, 0.25, -1, -1.5, 0.25, 1].map((value) => value / arc_rad);
  add(twist, arc_rad * twisting);
  return stiffness;
}

/** Adds the forces that a closed ring of such elements puts on its stations, three numbers a station. */
export function addRingForces(element: Float64Array, closure: Float64Array, forces: Float64Array): void {
  const stations = closure.length / 3;
  for (let station = 0; station < stations; station++) {
    const next = station + 1 === stations ? 0 : station + 1;
    for (let i = 0; i < 6; i++) {
      let force = 0;
      for (let j = 0; j < 3; j++)
        force += element[6 * i + j]! * closure[3 * station + j]! + element[6 * i + 3 + j]! * closure[3 * next + j]!;
      forces[3 * (i < 3 ? station : next) + (i % 3)]! += force;
    }
  }
}
