import type { SentenceData } from '@seatwell/contract';

interface Said {
  readonly [name: string]: unknown;
}

const MINUTE_MS = 60_000;

const text = (value: unknown): string | null => (typeof value === 'string' ? value : null);
const count = (value: unknown): number | null => (typeof value === 'number' ? value : null);
const flag = (value: unknown): boolean | null => (typeof value === 'boolean' ? value : null);

function tightening(said: Said, toolTags: Readonly<Record<string, string>>): SentenceData {
  const { asEntered } = (said['set'] ?? {}) as { asEntered?: { value: number; unit: string } };
  const { toolId } = (said['tools'] ?? {}) as { toolId?: string };
  const minutes = (Date.parse(String(said['endedAt'])) - Date.parse(String(said['startedAt']))) / MINUTE_MS;
  return {
    set: asEntered?.value ?? null,
    unit: asEntered?.unit ?? null,
    tool: toolId ? (toolTags[toolId] ?? null) : null,
    minutes: Number.isFinite(minutes) ? Math.round(minutes) : null,
  };
}

const worstOf = (faces: unknown): string | null => {
  const order = ['clean', 'light-marks', 'scored', 'corroded', 'damaged'];
  const conditions = Array.isArray(faces) ? faces.map((face: Said) => order.indexOf(String(face['condition']))) : [];
  return order[Math.max(-1, ...conditions)] ?? null;
};

type Short = (said: Said, toolTags: Readonly<Record<string, string>>) => SentenceData;

const reasonOnly: Short = (said) => ({ reason: text(said['reason']) });

const SHORT: Readonly<Record<string, Short>> = {
  'joint-listed': (said) => ({ tag: text(said['tag']) }),
  'joint-found': (said) => ({ tag: text(said['temporaryNumber']), nearest: text(said['nearest']) }),
  'joint-specified': reasonOnly,
  'joint-merged': reasonOnly,
  'joint-voided': (said) => ({ why: text(said['why']), reason: text(said['reason']) }),
  'make-planned': (said) => ({
    number: count(said['number']),
    purpose: text(said['purpose']),
    workScope: text(said['workScope']),
  }),
  'make-assigned': (said) => ({ crewId: text(said['crewId']), plannedOn: text(said['plannedOn']) }),
  'make-cancelled': reasonOnly,
  'procedure-assigned': (said) => ({ revision: count(said['revision']) }),
  'target-approved': (said) => ({ basis: text(said['basis']), shortfall: text(said['acceptedShortfall']) }),
  'hold-placed': (said) => ({ reason: text(said['reason']), releasedBy: text(said['releasedBy']) }),
  'hold-released': reasonOnly,
  opened: (said) => ({
    zeroEnergyChecks: Array.isArray(said['zeroEnergyChecks']) ? said['zeroEnergyChecks'].length : 0,
    openEndsCovered: flag(said['openEndsCovered']),
  }),
  'faces-inspected': (said) => ({
    faces: Array.isArray(said['faces']) ? said['faces'].length : 0,
    worst: worstOf(said['faces']),
    accepted: flag(said['accepted']),
  }),
  'nipped-up': (said) => {
    const gasket = (said['gasket'] ?? {}) as Said;
    const alignment = (said['alignment'] ?? {}) as Said;
    return {
      gasketFamily: text(gasket['family']),
      batch: text(gasket['batch']),
      gaps_mm: Array.isArray(alignment['gaps_mm']) ? alignment['gaps_mm'].join(' ') : null,
    };
  },
  'pass-recorded': (said, toolTags) => ({
    pass: count(said['pass']),
    outcome: text(said['outcome']),
    lastBolt: count(said['lastBolt']),
    boltsDone: count(said['boltsDone']),
    why: text(said['why']),
    ...tightening(said, toolTags),
  }),
  'final-round-recorded': (said, toolTags) => ({
    rounds: count(said['rounds']),
    nutMoved: flag(said['nutMoved']),
    ...tightening(said, toolTags),
  }),
  'relaxation-pass-recorded': (said, toolTags) => ({
    nutsMoved: count(said['nutsMoved']),
    ...tightening(said, toolTags),
  }),
  'stud-replaced': (said) => ({
    bolts: Array.isArray(said['bolts']) ? said['bolts'].join(' ') : null,
    reason: text(said['reason']),
  }),
  loosened: (said) => ({ extent: text(said['extent']), reason: text(said['reason']) }),
  'leak-found': (said) => ({
    when: text(said['when']),
    where: text(said['where']),
    underPressure: flag(said['underPressure']),
  }),
  checked: (said) => ({ level: text(said['level']), outcome: text(said['outcome']), reason: text(said['reason']) }),
  witnessed: (said) => ({ point: text(said['point']) }),
  'witness-waived': (said) => ({ point: text(said['point']), reason: text(said['reason']) }),
  'deviation-accepted': (said) => ({ rule: text(said['rule']), reason: text(said['reason']) }),
  proven: (said) => ({ way: text(said['way']) }),
  'taken-back': reasonOnly,
  'punch-raised': (said) => ({ category: text(said['category']), text: text(said['text']) }),
  'punch-closed': (said) => ({ how: text(said['how']) }),
  'blind-planned': (said) => ({ number: text(said['number']) }),
  corrected: reasonOnly,
  revoked: reasonOnly,
  'review-settled': (said) => ({ outcome: text(said['outcome']), reason: text(said['reason']) }),
};

/** The few values of an event that a sentence about it needs; the words are the reader's language. */
export function historyData(type: string, payload: unknown, toolTags: Readonly<Record<string, string>>): SentenceData {
  return SHORT[type]?.((payload ?? {}) as Said, toolTags) ?? {};
}
