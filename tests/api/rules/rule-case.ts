import type { ProblemBody, ShutdownEventType } from '@seatwell/contract';
import { RULES } from '@seatwell/workflow';
import type supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted } from '../support/plant.ts';
import { openShutdown, type Shutdown } from '../support/shutdown.ts';
import type { Said, Tale } from '../support/tale.ts';

/** One of the two scenarios of a rule: what happens first, and what the command then says otherwise than it should. */
export interface Scenario<T extends ShutdownEventType> {
  /** another joint, where the first one cannot be put right */
  readonly given?: (shutdown: Shutdown) => Promise<Tale>;
  readonly first?: (tale: Tale) => Promise<unknown>;
  readonly says?: Said<T> | ((tale: Tale) => Said<T> | Promise<Said<T>>);
}

export interface RuleCase {
  readonly type: ShutdownEventType;
  readonly given: (shutdown: Shutdown) => Promise<Tale>;
  readonly fires: Scenario<never>;
  readonly satisfied: Scenario<never>;
  /** further rules that stop the same command; without it the rule stops it alone */
  readonly beside: readonly string[];
  /** a refusal that comes before the rules are asked and says the same */
  readonly problem: string;
  readonly lastly: ((shutdown: Shutdown) => Promise<unknown>) | undefined;
}

export type RuleCases = Readonly<Record<string, RuleCase>>;

interface Given<T extends ShutdownEventType> {
  readonly fires?: Scenario<T>;
  readonly satisfied?: Scenario<T>;
  readonly beside?: readonly string[];
  readonly problem?: string;
  readonly lastly?: (shutdown: Shutdown) => Promise<unknown>;
}

/** A rule that is asked of a command: what fires it, and the remedy after which the same command is accepted. */
export const asked = <T extends ShutdownEventType>(
  type: T,
  given: (shutdown: Shutdown) => Promise<Tale>,
  { fires = {}, satisfied = {}, beside = [], problem = 'rules-not-met', lastly }: Given<T>,
): RuleCase => ({
  type,
  given,
  fires: fires as Scenario<never>,
  satisfied: satisfied as Scenario<never>,
  beside,
  problem,
  lastly,
});

async function play({ type }: RuleCase, tale: Tale, { first, says }: Scenario<never>): Promise<supertest.Response> {
  await first?.(tale);
  return tale.say(type, typeof says === 'function' ? await (says as (tale: Tale) => Said)(tale) : (says ?? {}));
}

/** How often a command of this type is on record about the joint or its pack. */
const recorded = async ({ shutdown, jointId, packId }: Tale, type: string): Promise<number> => {
  const about = [type, [jointId, packId]];
  const { rows } = await shutdown.plant.db.query(
    'SELECT count(*) AS count FROM event WHERE type = $1 AND subject_id = ANY($2)',
    about,
  );
  return rows[0].count;
};

const ruleOf = (code: string) => {
  const rule = RULES.find((each) => each.code === code);
  if (!rule) throw new Error(`The table has no rule ${code}.`);
  return rule;
};

/** Who the refusal must name: the joint, or the pack of a rule about packs. */
const named = async (code: string, tale: Tale): Promise<string> => {
  if (ruleOf(code).subject === 'make') return tale.joint.tag;
  const { rows } = await tale.shutdown.plant.db.query('SELECT number FROM test_pack WHERE pack_id = $1', [tale.packId]);
  return rows[0].number;
};

async function refused(code: string, rule: RuleCase, tale: Tale): Promise<void> {
  await rule.fires.first?.(tale);
  const before = await recorded(tale, rule.type);
  const { first: _done, ...rest } = rule.fires;
  const response = await play(rule, tale, rest);
  const { type, errors } = response.body as ProblemBody;
  expect(type, JSON.stringify(response.body)).toBe(`urn:seatwell:problem:${rule.problem}`);
  expect(await recorded(tale, rule.type)).toBe(before);
  if (rule.problem !== 'rules-not-met') return;
  const stops = errors.filter((error) => error['severity'] !== 'flag');
  expect(stops.map((error) => error.code).sort()).toEqual([code, ...rule.beside].sort());
  const own = errors.find((error) => error.code === code);
  expect(own).toMatchObject({ joint: await named(code, tale), severity: expect.stringMatching(/stop|reason/) });
  expect(own?.['detail']).toMatch(/\S/);
  expect(own?.['remedy']).toMatch(/\S/);
}

async function flagged(code: string, rule: RuleCase, tale: Tale): Promise<void> {
  const answer = accepted(await play(rule, tale, rule.fires));
  expect(answer.disposition).toBe('applied');
  const flag = answer.failed.find((each) => each.rule === code);
  expect(flag).toMatchObject({ severity: 'flag', joint: tale.joint.tag });
}

/** The two scenarios of each rule, told on one shutdown. */
export function testRules(cases: RuleCases): void {
  let shutdown: Shutdown;
  beforeAll(async () => {
    shutdown = await openShutdown();
  });
  afterAll(() => shutdown.close());

  describe.each(Object.entries(cases))('%s', (code, rule) => {
    const onlyFlags = ruleOf(code).severity.C === 'flag';
    let told: Tale;
    it(onlyFlags ? 'is reported and blocks nothing' : 'stops the command, and nothing is recorded', async () => {
      told = await rule.given(shutdown);
      await (onlyFlags ? flagged : refused)(code, rule, told);
    });

    it('lets it pass once it is met', async () => {
      try {
        const another = rule.satisfied.given ?? (onlyFlags ? rule.given : undefined);
        const tale = another ? await another(shutdown) : told;
        const answer = accepted(await play(rule, tale, rule.satisfied));
        expect(answer.disposition).toBe('applied');
        expect(answer.failed.map((each) => each.rule)).not.toContain(code);
      } finally {
        await rule.lastly?.(shutdown);
      }
    });
  });
}
