import { refuse } from '../refusal.ts';
import { GASKET_FAMILY_CODES, type GasketFamily, gasketFamily } from './families.ts';

/** What may be done to a joint after it has been tightened, by the family of its gasket. */
export interface RetighteningRule {
  /** A relaxation pass is usual, at least 4 h after assembly and before the joint is hot. */
  readonly relaxationPass: boolean;
  readonly afterHot: GasketFamily['retightening'];
  readonly sentence: string;
  readonly source: string;
}

const SENTENCES: Readonly<Record<GasketFamily['retightening'], string>> = {
  'never-after-hot': 'Never retighten it once it has been hot: the binder has hardened and the gasket breaks.',
  'cold-only': 'Retighten it cold only: within about 24 h of assembly, or after the first cycle.',
  'in-site-window': 'Retighten it at start-up only inside the temperature window that the site states.',
  'maker-only': 'Retighten it only as its maker writes.',
  'not-needed': 'It has no gasket that relaxes.',
};
const SOURCE = 'common practice; the maker’s and the site’s rule go first';

/** Hours after assembly in which a creeping gasket is retightened cold (common practice). */
const COLD_HOURS = 24;

/**
 * The rule of a family: relaxation pass, and what may be done once the joint has been hot.
 * @throws CalcRefusal `unknown-gasket-family`
 */
export function retighteningRule(family: string): RetighteningRule {
  const found = gasketFamily(family);
  if (found === undefined) {
    refuse(
      'gasket.family',
      'unknown-gasket-family',
      `Gasket family "${family}" is unknown. Use one of ${GASKET_FAMILY_CODES.join(', ')}.`,
    );
  }
  return RULES[found.retightening][found.relaxationPass ? 'relaxes' : 'keeps'];
}

const ruleOf = (afterHot: GasketFamily['retightening']) => {
  const rule = { afterHot, sentence: SENTENCES[afterHot], source: SOURCE };
  return { relaxes: { ...rule, relaxationPass: true }, keeps: { ...rule, relaxationPass: false } };
};
const RULES = {
  'never-after-hot': ruleOf('never-after-hot'),
  'cold-only': ruleOf('cold-only'),
  'in-site-window': ruleOf('in-site-window'),
  'maker-only': ruleOf('maker-only'),
  'not-needed': ruleOf('not-needed'),
} as const;

/** The joint at the moment when somebody wants to retighten it. */
export interface RetighteningRequest {
  readonly family: string;
  readonly hasBeenHot: boolean;
  /** Metal temperature now, °C. */
  readonly temperature_C: number;
  /** Hours since the last pass. */
  readonly hoursSinceAssembly: number;
  /** Temperature window for a start-up retorque that the site states, with its source. */
  readonly siteWindow?: { readonly from_C: number; readonly to_C: number; readonly source: string };
  /** The maker's own permission, with its source. */
  readonly maker?: { readonly allows: boolean; readonly source: string };
}

/** Metal up to this is cold enough to touch and to tighten by a cold procedure (common practice). */
const COLD_C = 50;

/**
 * Whether a gasket may be retightened now. A joint under pressure is another matter: that needs a procedure of its own.
 *
 * Source: common practice by family; printed windows of start-up retorque differ (250-450 °F and 300-450 °F), so the
 *   site's own is asked for.
 * @throws CalcRefusal `unknown-gasket-family`, `retightening-window-missing`, `makers-word-missing`
 */
export function mayRetighten(input: RetighteningRequest): {
  readonly accepted: boolean;
  readonly reason: string;
  readonly source: string;
} {
  const rule = retighteningRule(input.family);
  if (input.maker !== undefined) {
    return {
      accepted: input.maker.allows,
      reason: input.maker.allows ? 'The maker allows it.' : 'The maker does not allow it.',
      source: input.maker.source,
    };
  }
  const answer = (accepted: boolean, reason: string, source = rule.source) => ({ accepted, reason, source });
  const cold = input.temperature_C <= COLD_C;
  switch (rule.afterHot) {
    case 'not-needed':
      return answer(false, rule.sentence);
    case 'maker-only':
      return refuse('maker', 'makers-word-missing', `${rule.sentence} Give the maker’s word with its source.`);
    case 'never-after-hot':
      return input.hasBeenHot ? answer(false, rule.sentence) : answer(cold, coldReason(cold, input.temperature_C));
    case 'cold-only':
      if (!cold) return answer(false, coldReason(cold, input.temperature_C));
      return input.hasBeenHot || input.hoursSinceAssembly <= COLD_HOURS
        ? answer(true, rule.sentence)
        : answer(false, `${input.hoursSinceAssembly} h have passed since assembly, more than about ${COLD_HOURS} h.`);
    case 'in-site-window': {
      if (!input.hasBeenHot && cold) return answer(true, coldReason(cold, input.temperature_C));
      const window = input.siteWindow;
      if (window === undefined) {
        refuse(
          'siteWindow',
          'retightening-window-missing',
          `${rule.sentence} Printed windows differ: give from_C, to_C and the source of the site’s.`,
        );
      }
      const inside = input.temperature_C >= window.from_C && input.temperature_C <= window.to_C;
      return answer(
        inside,
        `The metal has ${input.temperature_C} °C; the site’s window is ${window.from_C} to ${window.to_C} °C.`,
        window.source,
      );
    }
  }
}

const coldReason = (cold: boolean, temperature_C: number) =>
  cold
    ? `The joint is cold (${temperature_C} °C).`
    : `The metal has ${temperature_C} °C; this family is retightened at ${COLD_C} °C or less.`;
