import type { GasketFamilyCode, MakePurpose, Payload } from '@seatwell/contract';
import { gasketOf, type JointState, type MakeState } from '@seatwell/workflow';

/** What must be fitted, from register, make and target: it is compared with what is read off the parts. */
export interface ToBeFitted {
  readonly family: GasketFamilyCode;
  readonly detail: string | null;
  readonly size: string;
  readonly rating: string;
  readonly purpose: MakePurpose;
  readonly count: number;
  readonly boltGrade: string | null;
  readonly boltCount: number | null;
  readonly boltCondition: 'new' | 'reused' | null;
  readonly lubricant: string | null;
  readonly lubricantId: string | null;
}

export function toBeFitted(joint: JointState, make: MakeState): ToBeFitted {
  const gasket = gasketOf(joint, make);
  const { target } = make;
  const condition = target && target.boltCondition !== 'either' ? target.boltCondition : make.boltingCondition;
  return {
    family: gasket.family,
    detail: gasket.detail,
    size: joint.specification.flange.size,
    rating: joint.specification.flange.rating,
    purpose: make.purpose,
    count: gasket.count,
    boltGrade: target?.boltGrade ?? joint.bolting?.grade ?? null,
    boltCount: joint.bolting?.count ?? null,
    boltCondition: condition,
    lubricant: target?.lubricant ?? null,
    lubricantId: target?.lubricantId ?? null,
  };
}

export interface NipUpForm {
  readonly family: GasketFamilyCode | '';
  readonly size: string;
  readonly rating: string;
  readonly purpose: MakePurpose | '';
  readonly count: number | undefined;
  readonly batch: string;
  readonly boltGrade: string;
  readonly boltCount: number | undefined;
  readonly boltCondition: 'new' | 'reused' | '';
  readonly temporaryBolts: boolean;
  readonly lubricant: 'as-target' | 'other' | '';
  readonly otherLubricant: string;
  readonly parallelism_mm: number | null;
  readonly offset_mm: number | null;
  readonly rotation_mm: number | null;
  readonly pullIn_percent: number | undefined;
  readonly gaps_mm: readonly (number | null)[];
  readonly remark: string;
}

/** Nothing is filled in: what is on the marking is read off, not confirmed unread. */
export const blankNipUp: NipUpForm = {
  family: '',
  size: '',
  rating: '',
  purpose: '',
  count: undefined,
  batch: '',
  boltGrade: '',
  boltCount: undefined,
  boltCondition: '',
  temporaryBolts: false,
  lubricant: '',
  otherLubricant: '',
  parallelism_mm: null,
  offset_mm: null,
  rotation_mm: null,
  pullIn_percent: undefined,
  gaps_mm: [null, null, null, null],
  remark: '',
};

export type NipUpLack = 'gasket' | 'identity' | 'bolting' | 'lubricant' | 'alignment' | 'gaps';

/** What the form still lacks; null when it can be recorded. */
export function nipUpLack(form: NipUpForm, identified: boolean): NipUpLack | null {
  const gasket = form.family === 'none' || (form.size !== '' && form.rating !== '');
  if (form.family === '' || form.purpose === '' || form.count === undefined || !gasket) return 'gasket';
  if (!identified && form.family !== 'none') return 'identity';
  if (form.boltGrade === '' || form.boltCount === undefined || form.boltCondition === '') return 'bolting';
  if (form.lubricant === '' || (form.lubricant === 'other' && form.otherLubricant.trim() === '')) return 'lubricant';
  const readings = [form.parallelism_mm, form.offset_mm, form.rotation_mm, form.pullIn_percent ?? null];
  if (readings.some((reading) => reading === null)) return 'alignment';
  return form.gaps_mm.some((gap) => gap === null) ? 'gaps' : null;
}

/** What was read off and is not what must be fitted; each stops the nip-up. */
export function mismatches(
  form: NipUpForm,
  wanted: ToBeFitted,
): readonly ('family' | 'size' | 'rating' | 'purpose' | 'count')[] {
  const off: ('family' | 'size' | 'rating' | 'purpose' | 'count')[] = [];
  if (form.family !== '' && form.family !== wanted.family) off.push('family');
  if (form.size !== '' && wanted.size !== '' && form.size !== wanted.size) off.push('size');
  if (form.rating !== '' && wanted.rating !== '' && form.rating !== wanted.rating) off.push('rating');
  if (form.purpose !== '' && form.purpose !== wanted.purpose) off.push('purpose');
  if (form.count !== undefined && form.count !== wanted.count) off.push('count');
  return off;
}

/** The event's payload; call it only where nothing lacks. */
export function nipUpPayload(form: NipUpForm, wanted: ToBeFitted, markingPhoto: string | null): Payload<'nipped-up'> {
  if (form.family === '' || form.purpose === '' || form.boltCondition === '')
    throw new Error('The form is not complete.');
  const asTarget = form.lubricant === 'as-target' && wanted.lubricant !== null;
  return {
    gasket: {
      family: form.family,
      detail: form.family === wanted.family ? wanted.detail : null,
      size: form.size || null,
      rating: form.rating || null,
      purpose: form.purpose,
      count: form.count ?? 0,
      batch: form.batch.trim() || null,
      markingPhoto,
    },
    bolting: {
      grade: form.boltGrade,
      condition: form.boltCondition,
      count: form.boltCount ?? 0,
      temporary: form.temporaryBolts,
    },
    lubricantId: asTarget ? wanted.lubricantId : null,
    lubricant: asTarget ? (wanted.lubricant ?? '') : form.otherLubricant.trim(),
    alignment: {
      parallelism_mm: form.parallelism_mm,
      offset_mm: form.offset_mm,
      rotation_mm: form.rotation_mm,
      pullIn_percent: form.pullIn_percent ?? null,
      gaps_mm: form.gaps_mm.filter((gap) => gap !== null),
    },
    remark: form.remark.trim() || null,
  };
}
