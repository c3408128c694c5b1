import { describe, expect, test } from 'vitest';
import { asAlreadyDone, hashesIn, type QueuedFact, sendable, withPhotos, withWhatFollows } from './queued-fact.ts';

const fact = (eventId: string, lane: string, more: Partial<QueuedFact> = {}): QueuedFact => ({
  eventId,
  accountId: 'theo',
  shutdownId: 'spring',
  type: 'opened',
  lane,
  label: lane,
  command: {
    eventId,
    v: 1,
    subjectId: lane,
    makeId: null,
    deviceTime: '2027-03-09T07:20:00.000Z',
    clockOffset_ms: 120,
    device: 'phone',
    performedBy: ['theo'],
    versionSeen: null,
    alreadyDone: false,
    paperForm: null,
    signature: null,
    payload: {},
  },
  state: 'waiting',
  problem: null,
  meaning: null,
  ...more,
});
const ids = (facts: readonly QueuedFact[]) => facts.map((each) => each.eventId);

describe('what is sent, and when', () => {
  test('the first of each joint, in the order in which they were said', () => {
    expect(ids(sendable([fact('3', 'J-2'), fact('2', 'J-1'), fact('1', 'J-1')]))).toEqual(['1', '3']);
  });

  test('nothing behind a fact that was refused or waits for a signature', () => {
    const refused = fact('1', 'J-1', { state: 'refused' });
    const unsigned = fact('3', 'J-2', { state: 'to-sign' });
    expect(sendable([refused, fact('2', 'J-1'), unsigned, fact('4', 'J-2')])).toEqual([]);
    expect(ids(sendable([refused, fact('2', 'J-1'), fact('5', 'J-3')]))).toEqual(['5']);
  });

  test('a fact is taken back with what was done on top of it, and with nothing else', () => {
    const facts = [fact('1', 'J-1'), fact('2', 'J-1'), fact('3', 'J-2'), fact('4', 'J-1')];
    expect(ids(withWhatFollows(facts, '2'))).toEqual(['2', '4']);
    expect(withWhatFollows(facts, '9')).toEqual([]);
  });

  test('said to be already done, it goes again under the same id and with the same words', () => {
    const problem = { code: 'rules-not-met', status: 422, title: 'Rules stop this', detail: '', items: [] };
    const done = asAlreadyDone(fact('1', 'J-1', { state: 'refused', problem }));
    expect(done).toMatchObject({ eventId: '1', state: 'waiting', problem: null });
    expect(done.command).toEqual({ ...fact('1', 'J-1').command, alreadyDone: true });
  });
});

test('a photo is named by the hash that the server gave it, wherever the fact names it', () => {
  const [own, server] = ['a'.repeat(64), 'b'.repeat(64)];
  const payload = { photo: own, faces: [{ photo: own, flatness_mm: 0.1 }], remark: 'aaa' };
  const before = fact('1', 'J-1');
  const said = { ...before, command: { ...before.command, payload, paperForm: own } };
  expect(withPhotos(said, new Map([[own, server]])).command.paperForm).toBe(server);
  expect(hashesIn(payload)).toEqual([own, own]);
  expect(withPhotos(said, new Map([[own, server]])).command.payload).toEqual({
    photo: server,
    faces: [{ photo: server, flatness_mm: 0.1 }],
    remark: 'aaa',
  });
});
