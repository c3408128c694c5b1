import type { EventType, Payload } from '@seatwell/contract';
import type { PackContext, RuleContext, RuleQuestion } from '@seatwell/workflow';
import { type Choices, type Point, type Story, toldTo } from '../story.ts';

export interface Asked {
  readonly question: RuleQuestion;
  readonly context: RuleContext;
}

/** A rule in its two cases: the situation that it stops, and the same once its remedy was applied. */
export interface RuleCase {
  readonly fires: () => Asked;
  readonly satisfied: () => Asked;
}

export interface PackCase {
  readonly fires: () => { readonly question: RuleQuestion; readonly context: PackContext };
  readonly satisfied: () => { readonly question: RuleQuestion; readonly context: PackContext };
}

export function ask<T extends EventType>(
  story: Story,
  type: T,
  change: Partial<Payload<T>> = {},
  around: Partial<RuleContext> = {},
  choices: Choices = {},
): Asked {
  const payload = { ...story.sound(type), ...change };
  return { question: { type, payload }, context: story.context(type, payload, { ...choices, around }) };
}

export interface Variant<T extends EventType> {
  /** the story told otherwise */
  readonly story?: () => Story;
  readonly change?: Partial<Payload<T>>;
  readonly around?: Partial<RuleContext>;
  readonly choices?: Choices;
}

/** The sound event at a point satisfies the rule; the variant fires it. */
export function at<T extends EventType>(point: Point, type: T, fires: Variant<T>, sound: Variant<T> = {}): RuleCase {
  const tell = (variant: Variant<T>) => () =>
    ask(
      (variant.story ?? sound.story ?? (() => toldTo(point)))(),
      type,
      { ...sound.change, ...variant.change },
      { ...sound.around, ...variant.around },
      variant.choices ?? sound.choices,
    );
  return { fires: tell(fires), satisfied: tell(sound) };
}
