import type { ClampedPart, JointSpecification } from '@seatwell/contract';
import { type RegisterField, type RegisterValues, unknownSpecification } from '@seatwell/workflow';
import { insertOf } from './described-joint.ts';

const part = (kind: ClampedPart['kind'], thickness_mm: number | null = null): ClampedPart => ({
  kind,
  thickness_mm,
  note: null,
});

/** The stack that follows from kind and gaskets; thicknesses that nobody stated stay open. */
export function stackOf(values: RegisterValues, gaskets: number): ClampedPart[] {
  if (values.kind === 'manway') return [part('flange'), part('gasket'), part('cover')];
  if (values.kind !== 'insert') {
    return gaskets === 0
      ? [part('flange'), part('flange')]
      : [part('flange'), ...Array.from({ length: gaskets }, () => part('gasket')), part('flange')];
  }
  const insert: ClampedPart = {
    ...part(values.insert ?? 'spacer', thicknessOf(values)),
    note: values.insert ? null : 'type of insert not stated',
  };
  return [
    part('flange'),
    ...(gaskets > 0 ? [part('gasket')] : []),
    insert,
    ...(gaskets > 1 ? [part('gasket')] : []),
    part('flange'),
  ];
}

/** A part has a thickness above zero, or none is known. */
const thicknessOf = (values: RegisterValues): number | null =>
  values.insertThickness && values.insertThickness.si > 0 ? values.insertThickness.si : null;

/**
 * What a row says of flange, bolts, gasket and service, laid over what is known. An empty cell changes nothing.
 * What was filled in from the standard fills gaps; it goes over known values only when the flange itself changes.
 * @param known null for a joint that is not in the register yet
 */
export function specificationFrom(
  values: RegisterValues,
  filled: ReadonlySet<RegisterField>,
  known: JointSpecification | null,
): JointSpecification {
  const base = known ?? unknownSpecification;
  const said = <F extends RegisterField & keyof RegisterValues>(field: F): RegisterValues[F] | undefined =>
    known && filled.has(field) ? undefined : values[field];
  const flange: JointSpecification['flange'] = {
    standard:
      said('standard') ?? (base.flange.standard === 'custom' ? (values.standard ?? 'custom') : base.flange.standard),
    size: values.size ?? base.flange.size,
    rating: values.rating ?? base.flange.rating,
    facing: values.facing ?? base.flange.facing,
  };
  const otherFlange =
    flange.standard !== base.flange.standard ||
    flange.size !== base.flange.size ||
    flange.rating !== base.flange.rating;
  const count = (otherFlange ? values.boltCount : said('boltCount')) ?? base.bolting?.count ?? values.boltCount;
  const thread = (otherFlange ? values.boltThread : said('boltThread')) ?? base.bolting?.thread ?? values.boltThread;
  const length = values.boltLength && values.boltLength.si > 0 ? values.boltLength.si : null;
  const gaskets = said('gasketCount') ?? (known ? base.gasket.count : (values.gasketCount ?? 1));
  const kindSaid = !known || said('kind') !== undefined;
  const pressure = values.designPressure && values.designPressure.si >= 0 ? values.designPressure : null;
  return {
    // What an engineer entered of this flange stays with it, and goes with another one.
    flange: otherFlange ? flange : { ...base.flange, ...flange },
    bolting:
      count !== undefined && count >= 3 && thread !== undefined
        ? {
            count,
            thread,
            grade: values.boltGrade ?? base.bolting?.grade ?? null,
            nutGrade: base.bolting?.nutGrade ?? null,
            length_mm: length ?? base.bolting?.length_mm ?? null,
          }
        : base.bolting,
    gasket: {
      ...base.gasket,
      family: values.gasketFamily ?? base.gasket.family,
      detail: values.gasketDetail ?? base.gasket.detail,
      count: gaskets,
    },
    clampedParts: kindSaid ? restacked(values, gaskets, base.clampedParts) : thickened(base, values),
    service: {
      ...base.service,
      medium: values.medium ?? base.service.medium,
      pressure_MPa: pressure?.si ?? base.service.pressure_MPa,
      pressureAsEntered: pressure?.entered ?? base.service.pressureAsEntered,
      temperature_C: values.designTemperature?.si ?? base.service.temperature_C,
      temperatureAsEntered: values.designTemperature?.entered ?? base.service.temperatureAsEntered,
    },
    hotExposed: base.hotExposed,
  };
}

/** The stack of the kind; where the parts are the same, what is known of their thickness stays. */
function restacked(values: RegisterValues, gaskets: number, known: readonly ClampedPart[]): ClampedPart[] {
  const stack = stackOf(values, gaskets);
  const same = stack.length === known.length && stack.every((each, index) => each.kind === known[index]?.kind);
  if (!same) return known.length > 0 && values.kind !== 'insert' && sealsAlike(stack, known) ? [...known] : stack;
  return stack.map((each, index) => ({
    ...(known[index] as ClampedPart),
    thickness_mm: each.thickness_mm ?? known[index]?.thickness_mm ?? null,
  }));
}

const gasketsIn = (stack: readonly ClampedPart[]): number => stack.filter((each) => each.kind === 'gasket').length;

/** A stack that an engineer entered in more detail, with the gaskets that the sheet says, is the better one. */
const sealsAlike = (stack: readonly ClampedPart[], known: readonly ClampedPart[]): boolean =>
  gasketsIn(stack) === gasketsIn(known) &&
  insertOf({ ...unknownSpecification, clampedParts: [...known] }) === undefined;

function thickened(base: JointSpecification, values: RegisterValues): ClampedPart[] {
  const thickness_mm = thicknessOf(values);
  const insert = insertOf(base);
  if (thickness_mm === null || insert === undefined) return [...base.clampedParts];
  return base.clampedParts.map((each) => (each === insert ? { ...each, thickness_mm } : each));
}
