import { type EventType, shutdownPayloads, sitePayloads } from '@seatwell/contract';
import { decide, evaluatePackRules, evaluateRules, eventKind, ORDER_CODES, RULES } from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';
import { PACK_CASES } from './support/rule-cases/pack-cases.ts';
import { RULE_CASES } from './support/rule-cases.ts';

const codes = (failed: readonly { code: string }[]): string[] => failed.map(({ code }) => code);

describe('the table of rules', () => {
  it('gives each rule one code, a sentence, a remedy and somebody who clears it', () => {
    expect(new Set(codes(RULES)).size).toBe(RULES.length);
    for (const rule of RULES) {
      expect(rule.code, rule.code).toMatch(/^[a-z-]+\.[A-Za-z-]+$/);
      expect(rule.sentence, rule.code).toMatch(/^[A-Z].*\.$/);
      expect(rule.why, rule.code).toMatch(/^[A-Z].*\.$/);
      expect(rule.remedy, rule.code).toMatch(/^[A-Z].*\.$/);
      expect(rule.clearedBy.length, rule.code).toBeGreaterThan(0);
      expect(rule.events.length, rule.code).toBeGreaterThan(0);
    }
  });

  it('has both cases for every rule, and no case for a rule that is gone', () => {
    expect([...Object.keys(RULE_CASES), ...Object.keys(PACK_CASES)].sort()).toEqual(codes(RULES).sort());
  });

  it('has a rule for every answer of the order', () => {
    expect(codes(RULES)).toEqual(expect.arrayContaining([...ORDER_CODES]));
  });

  it('never lets a rule with a floor be shipped below stop', () => {
    for (const rule of RULES.filter((r) => r.floor))
      expect(Object.values(rule.severity), rule.code).toEqual(['stop', 'stop', 'stop']);
  });
});

const schemas: Record<string, { safeParse: (payload: unknown) => { success: boolean; error?: unknown } }> = {
  ...shutdownPayloads,
  ...sitePayloads,
};

describe.each(Object.entries(RULE_CASES))('rule %s', (code, { fires, satisfied }) => {
  it('fires, and says what was found', () => {
    const { question, context } = fires();
    expect(schemas[question.type]?.safeParse(question.payload)).toMatchObject({ success: true });
    const failed = evaluateRules(question, context);
    expect(codes(failed)).toContain(code);
    const failure = failed.find((f) => f.code === code);
    expect(failure?.detail).toMatch(/^\S.*\.$/);
    expect(failure?.joint).toBe('J-1001');
    const handling = { kind: eventKind(question.type as EventType, question.payload), alreadyDone: false };
    const blocks = failed.some((f) => f.severity !== 'flag');
    expect(decide(question, context, handling).outcome).toBe(blocks ? 'refuse' : 'accept');
  });

  it('is satisfied once its remedy is applied', () => {
    const { question, context } = satisfied();
    expect(codes(evaluateRules(question, context))).not.toContain(code);
    // Nothing else may hide behind the rule: the event is accepted.
    const handling = { kind: eventKind(question.type as EventType, question.payload), alreadyDone: false };
    expect(decide(question, context, handling)).toMatchObject({ outcome: 'accept' });
  });
});

describe.each(Object.entries(PACK_CASES))('rule %s', (code, { fires, satisfied }) => {
  it('fires on the pack', () => {
    const { question, context } = fires();
    expect(codes(evaluatePackRules(question, context))).toEqual([code]);
  });

  it('is satisfied once its remedy is applied', () => {
    const { question, context } = satisfied();
    expect(evaluatePackRules(question, context)).toEqual([]);
  });
});
