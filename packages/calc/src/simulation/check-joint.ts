import { CalcRefusal, type RefusalItem } from '../refusal.ts';
import { boltStiffness, type SimulationJoint } from './joint-model.ts';

/** Most bolts that the simulation takes. */
export const MOST_BOLTS = 200;

/**
 * Refuses a joint that cannot be simulated.
 * @throws CalcRefusal `out-of-range`, `gasket-curve-must-rise`, `gasket-contact-impossible`,
 *   `bolt-compliance-not-positive`, with every fault found
 */
export function checkJoint(joint: SimulationJoint): void {
  const faults: RefusalItem[] = [];
  const positive = (path: string, value: number | undefined) => {
    if (value === undefined || (Number.isFinite(value) && value > 0)) return;
    faults.push({
      path,
      code: 'out-of-range',
      message: `${path} is ${value}; it must be a number above 0.`,
      limit: 0,
    });
  };
  const { ring, gasket, guideRing, initialTilt, boltCount } = joint;
  if (!Number.isInteger(boltCount) || boltCount < 4 || boltCount > MOST_BOLTS)
    faults.push({
      path: 'boltCount',
      code: 'out-of-range',
      message: `boltCount is ${boltCount}; it must be a whole number from 4 to ${MOST_BOLTS}.`,
      limit: boltCount < 4 ? 4 : MOST_BOLTS,
    });
  positive('ring.radius_mm', ring.radius_mm);
  positive('ring.bendingStiffness_Nmm2', ring.bendingStiffness_Nmm2);
  positive('ring.torsionStiffness_Nmm2', ring.torsionStiffness_Nmm2);
  positive('boltCircle_mm', joint.boltCircle_mm);
  positive('boltLength_mm', joint.boltLength_mm);
  positive('boltArea_mm2', joint.boltArea_mm2);
  positive('boltModulus_MPa', joint.boltModulus_MPa);
  positive('flangeOutside_mm', joint.flangeOutside_mm);
  positive('gasket.contactInside_mm', gasket.contactInside_mm);
  positive('gasket.contactOutside_mm', gasket.contactOutside_mm);
  positive('gasket.curve.thickness_mm', gasket.curve.thickness_mm);
  positive('guideRing.closure_mm', guideRing?.closure_mm);
  positive('guideRing.diameter_mm', guideRing?.diameter_mm);
  positive('guideRing.stiffness_N_per_mm2', guideRing?.stiffness_N_per_mm2);
  const atLeastZero: [string, number | undefined][] = [
    ['faceCompliance_mm3_per_N', joint.faceCompliance_mm3_per_N],
    ['gasket.curve.E0_MPa', gasket.curve.E0_MPa],
    ['gasket.curve.K1', gasket.curve.K1],
    ['initialTilt.difference_mm', initialTilt?.difference_mm],
  ];
  for (const [path, value] of atLeastZero) {
    if (value === undefined || (Number.isFinite(value) && value >= 0)) continue;
    faults.push({ path, code: 'out-of-range', message: `${path} is ${value}; it must be 0 or more.`, limit: 0 });
  }
  if (initialTilt !== undefined && !Number.isFinite(initialTilt.widestAt_deg))
    faults.push({
      path: 'initialTilt.widestAt_deg',
      code: 'out-of-range',
      message: `initialTilt.widestAt_deg is ${initialTilt.widestAt_deg}; it must be an angle in degrees.`,
    });
  if (gasket.contactOutside_mm <= gasket.contactInside_mm)
    faults.push({
      path: 'gasket.contactOutside_mm',
      code: 'gasket-contact-impossible',
      message: `The gasket's contact outside is ${gasket.contactOutside_mm} mm and not above its inside, ${gasket.contactInside_mm} mm. Correct the diameters.`,
      limit: gasket.contactInside_mm,
    });
  checkCurve(joint, faults);
  const compliance = 1 / boltStiffness(joint);
  if (!(compliance > 0))
    faults.push({
      path: 'boltCompliance_mm_per_N',
      code: 'bolt-compliance-not-positive',
      message: `The bolt with its local compliance has ${compliance} mm/N; it must be above 0. Check length, area and compliance.`,
      limit: 0,
    });
  if (faults.length > 0) throw new CalcRefusal(faults);
}

function checkCurve(joint: SimulationJoint, faults: RefusalItem[]): void {
  const { points, thickness_mm } = joint.gasket.curve;
  let last: readonly [number, number] = [0, 0];
  const rises = points.every((point) => {
    const ok = point[0] > last[0] && point[1] > last[1] && Number.isFinite(point[0]) && Number.isFinite(point[1]);
    last = point;
    return ok;
  });
  if (points.length > 0 && rises && last[0] < thickness_mm) return;
  faults.push({
    path: 'gasket.curve.points',
    code: 'gasket-curve-must-rise',
    message:
      'The gasket curve needs at least one point; compression and stress must both rise from 0, and compression ' +
      `must stay below the thickness of ${thickness_mm} mm.`,
    limit: thickness_mm,
  });
}
