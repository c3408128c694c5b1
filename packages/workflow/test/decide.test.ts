import { DEFAULT_SETTINGS, decide, RULES, severityOf } from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';
import { PAYLOADS } from './support/payloads.ts';
import { listing } from './support/register.ts';
import { RULE_CASES } from './support/rule-cases.ts';
import { Story, toldTo } from './support/story.ts';

const ruleOf = (code: string) => RULES.find((r) => r.code === code)!;
const withSeverity = (code: string, severity: 'flag' | 'reason' | 'stop') => ({
  settings: { ...DEFAULT_SETTINGS, severities: { [code]: { A: severity, B: severity, C: severity } } },
});
const undated = { ...PAYLOADS['nipped-up'].gasket, batch: null, markingPhoto: null };

describe('severities', () => {
  it('are raised by settings', () => {
    const rule = ruleOf('passes.time-plausible');
    expect(severityOf(rule, 'B', DEFAULT_SETTINGS)).toBe('flag');
    expect(severityOf(rule, 'B', withSeverity(rule.code, 'stop').settings)).toBe('stop');
  });

  it('are never lowered by settings', () => {
    const rule = ruleOf('passes.talk');
    expect(severityOf(rule, 'C', withSeverity(rule.code, 'flag').settings)).toBe('stop');
  });

  it.each(RULES.filter((r) => r.floor).map((r) => r.code))('%s never goes below stop', (code) => {
    for (const criticality of ['A', 'B', 'C'] as const)
      expect(severityOf(ruleOf(code), criticality, withSeverity(code, 'flag').settings)).toBe('stop');
  });
});

describe('what becomes of a command', () => {
  const { question, context } = RULE_CASES['passes.talk']!.fires();

  it('a fact that a rule stops is refused, with all failed rules', () => {
    const more = { ...context, persons: {}, elsewhereAtTheSameTime: ['J-1002'] };
    const decision = decide(question, more, { kind: 'fact', alreadyDone: false });
    expect(decision).toMatchObject({ outcome: 'refuse' });
    if (decision.outcome !== 'refuse') return;
    expect(decision.failed.map((f) => [f.code, f.severity])).toEqual([
      ['passes.talk', 'stop'],
      ['passes.qualified', 'stop'],
      ['passes.one-place-at-a-time', 'flag'],
    ]);
  });

  it('the same fact, said to be done already, is kept for review with the codes that stop it', () => {
    const more = { ...context, elsewhereAtTheSameTime: ['J-1002'] };
    expect(decide(question, more, { kind: 'fact', alreadyDone: true })).toMatchObject({
      outcome: 'needs-review',
      codes: ['passes.talk'],
    });
  });

  it('a decision is refused however done it is said to be', () => {
    const proof = RULE_CASES['proven.pack-released']!.fires();
    expect(decide(proof.question, proof.context, { kind: 'decision', alreadyDone: true }).outcome).toBe('refuse');
  });

  it('a flag is reported and blocks nothing', () => {
    const fast = RULE_CASES['passes.time-plausible']!.fires();
    expect(decide(fast.question, fast.context, { kind: 'fact', alreadyDone: false })).toMatchObject({
      outcome: 'accept',
      flags: [{ code: 'passes.time-plausible', severity: 'flag' }],
    });
  });

  it('an event that no rule speaks of is accepted', () => {
    const told = { type: 'item-moved', payload: PAYLOADS['item-moved'] };
    expect(decide(told, context, { kind: 'fact', alreadyDone: false })).toEqual({ outcome: 'accept', flags: [] });
  });
});

describe('a deviation', () => {
  const accepted = () => toldTo('faces accepted').record('deviation-accepted');
  const handling = { kind: 'fact', alreadyDone: false } as const;
  const question = { type: 'nipped-up', payload: { ...PAYLOADS['nipped-up'], gasket: undated } };

  it('lets the rule that it names pass, and is reported with its reason', () => {
    const story = accepted();
    const decision = decide(question, story.context('nipped-up', question.payload), handling);
    expect(decision).toMatchObject({
      outcome: 'accept',
      flags: [{ code: 'nipped-up.gasket-identified', deviation: { reason: 'Marking seen by QC' } }],
    });
  });

  it('ends with its day', () => {
    const story = toldTo('faces accepted').record('deviation-accepted', { until: '2027-03-01' });
    expect(decide(question, story.context('nipped-up', question.payload), handling).outcome).toBe('refuse');
  });

  it('does not help once the site has raised the rule to a stop', () => {
    const context = accepted().context('nipped-up', question.payload, {
      around: withSeverity('nipped-up.gasket-identified', 'stop'),
    });
    expect(decide(question, context, handling).outcome).toBe('refuse');
  });

  it('is refused for a stop', () => {
    const story = toldTo('faces accepted');
    expect(
      story.propose('deviation-accepted', { ...PAYLOADS['deviation-accepted'], rule: 'nipped-up.gasket-family' }),
    ).toMatchObject({ outcome: 'refuse', failed: [{ code: 'deviation.acceptable', limit: 'reason' }] });
  });
});

describe('what the criticality demands', () => {
  it('A: QC every one, a witness point, measured flatness, a relaxation pass', () => {
    const story = toldTo('tight', new Story({ ...listing, criticality: 'A' }));
    const refused = story.propose('checked', { level: 'chargehand', outcome: 'accepted', reason: null });
    expect(refused.outcome === 'refuse' && refused.failed.map((f) => f.code)).toEqual([
      'checked.level',
      'checked.witness-point',
    ]);
    story.record('witnessed').record('checked', { level: 'every' });
    const proof = story.propose('proven', PAYLOADS.proven);
    expect(proof.outcome === 'refuse' && proof.failed.map((f) => f.code)).toEqual(['proven.no-relaxation-due']);
    story.wait(4).record('relaxation-pass-recorded').record('proven');
    expect(story.make().stage).toBe('proven');
  });

  it('B: the chargehand, unless the make was drawn for the sample', () => {
    const told = () => toldTo('every pass', new Story({ ...listing, criticality: 'B' }));
    expect(told().record('final-round-recorded').record('checked').make().stage).toBe('checked');
    const drawn = told().record('final-round-recorded', {}, { evidence: { sampleDrawn: true } });
    expect(drawn.propose('checked', PAYLOADS.checked)).toMatchObject({
      failed: [{ code: 'checked.level', limit: 'sample' }],
    });
    expect(drawn.record('checked', { level: 'sample' }).make().stage).toBe('checked');
  });

  it('C: the chargehand; the crew by itself is below', () => {
    const story = toldTo('tight');
    expect(story.propose('checked', { ...PAYLOADS.checked, level: 'self' })).toMatchObject({
      outcome: 'refuse',
      failed: [{ code: 'checked.level', limit: 'chargehand' }],
    });
  });
});
