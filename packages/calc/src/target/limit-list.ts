import type { WorkingStep } from '../working.ts';
import type { WindowLimit } from './request.ts';

/** One limit with the formula and numbers of its working; the text is only built when somebody asked. */
export interface LimitEntry {
  readonly name: string;
  readonly boltStress_MPa: number;
  readonly source: string;
  readonly formula: string;
  readonly text: () => string;
  readonly more?: Partial<WindowLimit>;
}

/** Turns entries into limits and, if asked, into steps. */
export function limitList(
  side: 'lower' | 'upper',
  area: WindowLimit['area'],
  steps: WorkingStep[] | undefined,
): { readonly limits: WindowLimit[]; readonly add: (entry: LimitEntry) => void } {
  const limits: WindowLimit[] = [];
  const add = ({ name, boltStress_MPa, source, formula, text, more }: LimitEntry) => {
    limits.push({ name, boltStress_MPa, area, ...more, source });
    steps?.push({
      symbol: side === 'lower' ? 'Sb,min' : 'Sb,max',
      meaning: `${side === 'lower' ? 'least' : 'highest'} bolt stress: ${name}`,
      formula,
      substituted: text(),
      value: boltStress_MPa,
      unit: 'MPa',
      source,
    });
  };
  return { limits, add };
}
