import { type Flag, overtakenBy, temporaryFittingOf } from '@seatwell/workflow';
import { type BannerCode, fill, type SheetTexts } from '../texts/sheet-texts.ts';
import type { SheetSource } from './sheet-source.ts';

export interface SheetBanner {
  readonly code: BannerCode;
  readonly heading: string;
  readonly text: string;
  /** for its sake no set value is printed */
  readonly withholds: boolean;
}

const IN_SERVICE = ['start-up-retorque', 'live-tightening', 'hot-bolting'];

const details = (flags: readonly Flag[], code: Flag['code']): string | null => {
  const found = flags.filter((flag) => flag.code === code).map(({ detail }) => detail);
  return found.length > 0 ? found.join('; ') : null;
};

/**
 * Why no set value may stand on the sheet, the weightiest reason first; null = they may. Nobody tightens to a number of a
 * procedure or target that is not in force, or of a make that is not to be worked on.
 */
export function withheld({ joint, make, procedure, flags }: SheetSource): BannerCode | null {
  if (joint.voided) return 'voided';
  if (make.cancelled) return 'cancelled';
  if (overtakenBy(joint, make)) return 'overtaken';
  if (!procedure?.approved) return 'no-procedure';
  if (procedure.superseded) return 'procedure-superseded';
  if (!make.target) return 'no-target';
  return flags.some(({ code }) => code === 'target-out-of-date') ? 'target-out-of-date' : null;
}

function partTight(source: SheetSource, texts: SheetTexts): string {
  const { make, names, timeZone } = source;
  const left = make.partTight;
  return fill(texts.banners['part-tight'].text, {
    pass: left?.pass ?? make.nextPass,
    who: left?.leftBy.map((id) => names[id] ?? texts.someone).join(', ') || texts.someone,
    at: left ? texts.figures.localTime(left.leftAt, timeZone) : texts.none,
    restart: left?.restartPass ?? make.nextPass,
    why: left?.why ?? texts.noReason,
  });
}

/** What must be read before anything else on the sheet, the worst first. */
export function sheetBanners(source: SheetSource, texts: SheetTexts, noSequence: string | null): SheetBanner[] {
  const { joint, make, flags } = source;
  const banners: SheetBanner[] = [];
  const stopped = withheld(source);
  const raise = (code: BannerCode, values: Record<string, string> = {}, text?: string) => {
    const banner = texts.banners[code];
    const withholds = code === stopped;
    banners.push({ code, heading: banner.heading, text: text ?? fill(banner.text, values), withholds });
  };
  if (joint.voided) raise('voided', { detail: joint.voided.reason });
  if (make.cancelled) raise('cancelled');
  if (overtakenBy(joint, make)) raise('overtaken');
  if (stopped && !banners.some(({ code }) => code === stopped)) raise(stopped);
  if (noSequence !== null) raise('no-sequence', { detail: noSequence });
  const held = details(flags, 'on-hold');
  if (held) raise('on-hold', { detail: held });
  if (make.leaking) raise('leaking');
  if (make.stage === 'part-tight') raise('part-tight', {}, partTight(source, texts));
  if (make.rejected) raise('rejected');
  if (make.retighten) raise('retighten');
  const temporary = temporaryFittingOf(joint);
  if (temporary) {
    const fitted = [
      temporary.gasket ? texts.words.fitting.gasket : null,
      temporary.bolts ? texts.words.fitting.bolts : null,
    ];
    raise('temporary-fitting', { detail: fitted.filter((each) => each !== null).join(', ') });
  }
  if (IN_SERVICE.includes(make.workScope)) raise('in-service', { scope: texts.words.scope[make.workScope] });
  if (make.purpose !== 'final') raise('not-final', { purpose: texts.words.purpose[make.purpose] });
  if (make.target?.shortfallReason) raise('shortfall', { detail: make.target.shortfallReason });
  return banners;
}
