import { findFlange } from '../flanges/find-flange.ts';
import { WELD_NECK_HUBS } from '../flanges/tables/weld-neck-hubs.ts';
import { GASKET_DIMENSIONS_ASME_B16_5 } from '../gaskets/tables/dimensions-asme-b16-5.ts';
import { GASKET_DIMENSIONS_ASME_B16_47 } from '../gaskets/tables/dimensions-asme-b16-47.ts';
import { GASKET_DIMENSIONS_EN_1092_1 } from '../gaskets/tables/dimensions-en-1092-1.ts';
import { refuse } from '../refusal.ts';
import { requiredNumberIn, type SourcedTable, tableRows } from '../tables/sourced-table.ts';
import { threadGeometry } from '../threads/geometry.ts';
import type { Warning } from '../working.ts';
import { estimatedRing } from './estimated-ring.ts';
import type { GasketCurve } from './gasket-law.ts';
import type { SimulationJoint } from './joint-model.ts';
import { findRing, type PairKind, type RingPerFlange } from './ring-parameters.ts';
import { GASKET_CURVES, GASKET_CURVES_SOURCE } from './tables/gasket-curves.ts';
import { FOUR_BOLTS, POOR_FIT } from './texts.ts';

/** A gasket as the caller describes it. */
export interface SimulatedGasket {
  /** Family code; decides the curve where none is given. */
  readonly family: string;
  readonly contactInside_mm?: number;
  readonly contactOutside_mm?: number;
  /** Measured curve: compression mm, stress MPa. */
  readonly curve?: readonly (readonly [number, number])[];
  readonly thickness_mm?: number;
  readonly E0_MPa?: number;
  readonly K1?: number;
}

/** A joint of standard weld-neck flanges. */
export interface StandardJointRequest {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
  readonly boltCount?: number;
  readonly kind: PairKind;
  readonly gasket: SimulatedGasket;
}

/** A joint described by its ring, per flange. */
export interface RingJointRequest {
  readonly equivalentRing: RingPerFlange;
  readonly boltCount: number;
  readonly thread: string;
  readonly boltCircle_mm: number;
  /** Elastic length, grip plus one diameter. */
  readonly boltLength_mm: number;
  readonly gasket: SimulatedGasket;
}

/** A joint ready for the simulation, with what must be said about it. */
export interface PreparedJoint {
  readonly joint: SimulationJoint;
  readonly thread: string;
  readonly tensileArea_mm2: number;
  readonly rootArea_mm2: number;
  readonly ringSource: string;
  readonly curveIsEstimated: boolean;
  readonly warnings: readonly Warning[];
}

/** Compressed gasket in the grip of the ring fits, mm. */
const FITTED_GASKET_MM = 3.2;

/**
 * Curve of a gasket: the measured one where given, else the estimate of its family.
 * @throws CalcRefusal `gasket-curve-missing`
 */
export function gasketCurve(gasket: SimulatedGasket): { readonly curve: GasketCurve; readonly estimated: boolean } {
  const known = Object.hasOwn(GASKET_CURVES, gasket.family) ? GASKET_CURVES[gasket.family] : undefined;
  const thickness_mm = gasket.thickness_mm ?? known?.thickness_mm;
  const E0_MPa = gasket.E0_MPa ?? known?.E0_MPa;
  const K1 = gasket.K1 ?? known?.K1;
  const points = gasket.curve ?? known?.points;
  if (points === undefined || thickness_mm === undefined || E0_MPa === undefined || K1 === undefined)
    refuse(
      'gasket.curve',
      'gasket-curve-missing',
      `There is no compression curve for family "${gasket.family}"; estimates exist for ` +
        `${Object.keys(GASKET_CURVES).join(', ')}. Enter the measured curve with thickness_mm, E0_MPa and K1.`,
    );
  return { curve: { thickness_mm, points, E0_MPa, K1 }, estimated: gasket.curve === undefined };
}

function pairOf(
  ring: RingPerFlange,
): Pick<SimulationJoint, 'ring' | 'boltCompliance_mm_per_N' | 'faceCompliance_mm3_per_N'> {
  return {
    ring: {
      radius_mm: ring.R_mm,
      bendingStiffness_Nmm2: ring.EI_Nmm2 / 2,
      torsionStiffness_Nmm2: ring.GJ_Nmm2 / 2,
    },
    boltCompliance_mm_per_N: 2 * ring.cBolt_mm_per_N,
    faceCompliance_mm3_per_N: 2 * ring.cGasket_mm3_per_N,
  };
}

const GASKET_TABLES: Readonly<Record<string, SourcedTable>> = {
  'ASME-B16.5': GASKET_DIMENSIONS_ASME_B16_5,
  'ASME-B16.47-A': GASKET_DIMENSIONS_ASME_B16_47,
  'ASME-B16.47-B': GASKET_DIMENSIONS_ASME_B16_47,
  'EN-1092-1': GASKET_DIMENSIONS_EN_1092_1,
};

type Key = { readonly standard: string; readonly size: string; readonly rating: string };
type Contact = { readonly inside: number; readonly outside: number };

const isKey = (cells: Readonly<Record<string, string>>, key: Key) =>
  cells.standard === key.standard && cells.size === key.size && cells.rating === key.rating;

/** Sheets are cut as flat rings; families without a table of their own must be measured. */
function tabulatedContact(key: Key, family: string): Contact | undefined {
  const form = family === 'spiral-wound' ? family : family.endsWith('-sheet') ? 'flat-ring' : undefined;
  const table = GASKET_TABLES[key.standard];
  if (form === undefined || table === undefined) return undefined;
  const row = tableRows(table).find((cells) => isKey(cells, key) && cells.form === form);
  if (row === undefined || row.contactInside_mm === '' || row.contactOutside_mm === '') return undefined;
  return {
    inside: requiredNumberIn(row, 'contactInside_mm'),
    outside: requiredNumberIn(row, 'contactOutside_mm'),
  };
}

function contactOf(key: Key, gasket: SimulatedGasket, fitted: Contact | undefined): Contact {
  const table =
    gasket.family === 'spiral-wound' && fitted !== undefined ? fitted : tabulatedContact(key, gasket.family);
  const inside = gasket.contactInside_mm ?? table?.inside;
  const outside = gasket.contactOutside_mm ?? table?.outside;
  if (inside === undefined || outside === undefined)
    refuse(
      'gasket.contactInside_mm',
      'gasket-contact-missing',
      `No ${gasket.family} gasket of ${key.standard} ${key.size} ${key.rating} is in the tables. Give contactInside_mm and contactOutside_mm.`,
    );
  return { inside, outside };
}

/**
 * Prepares a joint of standard weld-neck flanges.
 *
 * Bolt length is 2·t + 3.2 mm + d, the length that the rings were fitted with.
 * @throws CalcRefusal as `findFlange`; `gasket-curve-missing`, `gasket-contact-missing`, `ring-not-known`
 */
export function standardJoint(request: StandardJointRequest): PreparedJoint {
  const flange = findFlange(request);
  const thread = threadGeometry({ thread: flange.boltThread });
  const row = findRing(flange, request.kind);
  const boltLength_mm = 2 * flange.thickness_mm + FITTED_GASKET_MM + thread.nominalDiameter_mm;
  // Some rings were fitted with the flat gasket of the flange, where no spiral-wound size is known.
  const fitted =
    row === undefined || row.note.includes('flat-ring')
      ? undefined
      : { inside: row.gasketInside_mm, outside: row.gasketOutside_mm };
  const contact = contactOf(flange, request.gasket, fitted);
  const { curve, estimated } = gasketCurve(request.gasket);
  const warnings: Warning[] = [...flange.warnings];
  if (estimated) warnings.push({ code: 'gasket-curve-estimated', message: GASKET_CURVES_SOURCE });
  if (flange.boltCount === 4) warnings.push(FOUR_BOLTS);
  if (row?.quality === 'poor' && flange.boltCount !== 4) warnings.push(POOR_FIT);
  let ring: RingPerFlange;
  let ringSource: string;
  if (row !== undefined) {
    ring = row;
    ringSource = row.source;
  } else {
    const hub = tableRows(WELD_NECK_HUBS).find((cells) => isKey(cells, flange));
    if (hub === undefined)
      refuse(
        'joint',
        'ring-not-known',
        `Neither the ring nor the hub of ${flange.standard} ${flange.size} ${flange.rating} is in the tables. Give equivalentRing.`,
      );
    ring = estimatedRing(
      {
        outsideDiameter_mm: flange.outsideDiameter_mm,
        bore_mm: requiredNumberIn(hub, 'bore_mm'),
        thickness_mm: flange.thickness_mm,
        hubBase_mm: requiredNumberIn(hub, 'hubBase_mm'),
        hubAtWeld_mm: requiredNumberIn(hub, 'pipeOutside_mm'),
        lengthThroughHub_mm: requiredNumberIn(hub, 'lengthThroughHub_mm'),
        gasketInside_mm: contact.inside,
        gasketOutside_mm: contact.outside,
        boltLength_mm,
        boltArea_mm2: thread.tensileStressArea_mm2,
      },
      request.kind,
    );
    ringSource = 'estimated by formula from flange and hub; not fitted for this flange';
    warnings.push({
      code: 'ring-estimated',
      message:
        'The ring of this flange is estimated by formula: its lowest load may be off by 5 points more' +
        (request.kind === 'weld-neck-to-blind' ? '; against a blind the estimate is rough.' : '.'),
    });
  }
  return {
    joint: {
      ...pairOf(ring),
      boltCount: flange.boltCount,
      boltCircle_mm: flange.boltCircle_mm,
      boltLength_mm,
      boltArea_mm2: thread.tensileStressArea_mm2,
      gasket: { contactInside_mm: contact.inside, contactOutside_mm: contact.outside, curve },
      flangeOutside_mm: flange.outsideDiameter_mm,
    },
    thread: thread.thread,
    tensileArea_mm2: thread.tensileStressArea_mm2,
    rootArea_mm2: thread.rootArea_mm2,
    ringSource,
    curveIsEstimated: estimated,
    warnings,
  };
}

/**
 * Prepares a joint given by its equivalent ring, per flange; both flanges are taken as alike.
 * @throws CalcRefusal `unknown-thread`, `gasket-curve-missing`, `gasket-contact-missing`
 */
export function ringJoint(request: RingJointRequest): PreparedJoint {
  const thread = threadGeometry({ thread: request.thread });
  const { curve, estimated } = gasketCurve(request.gasket);
  const { contactInside_mm, contactOutside_mm } = request.gasket;
  if (contactInside_mm === undefined || contactOutside_mm === undefined)
    refuse(
      'gasket.contactInside_mm',
      'gasket-contact-missing',
      'A joint given by its ring needs contactInside_mm and contactOutside_mm of the gasket.',
    );
  const warnings: Warning[] = [];
  if (estimated) warnings.push({ code: 'gasket-curve-estimated', message: GASKET_CURVES_SOURCE });
  if (request.boltCount === 4) warnings.push(FOUR_BOLTS);
  return {
    joint: {
      ...pairOf(request.equivalentRing),
      boltCount: request.boltCount,
      boltCircle_mm: request.boltCircle_mm,
      boltLength_mm: request.boltLength_mm,
      boltArea_mm2: thread.tensileStressArea_mm2,
      gasket: { contactInside_mm, contactOutside_mm, curve },
    },
    thread: thread.thread,
    tensileArea_mm2: thread.tensileStressArea_mm2,
    rootArea_mm2: thread.rootArea_mm2,
    ringSource: 'given by the caller',
    curveIsEstimated: estimated,
    warnings,
  };
}
