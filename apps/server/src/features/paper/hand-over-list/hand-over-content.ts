import type { SystemPage } from '@seatwell/contract';
import type { JointState, MakeState } from '@seatwell/workflow';
import { shownMake } from '../../joints/shown-make.ts';
import { fill, type PaperLanguage, type SheetTexts, sheetTexts } from '../texts/sheet-texts.ts';
import type { HandOverSource } from './load-hand-over.ts';

/** More joints than these are not named twice on the list. */
const MOST_NAMED = 12;

interface Zero {
  readonly label: string;
  readonly count: number;
  readonly which: string;
  /** B items go with the system; everything else must be zero */
  readonly mustBeZero: boolean;
}

/** The hand-over list of a system as it will be printed. */
export interface HandOverContent {
  readonly recordedAt: string;
  readonly heading: string;
  readonly head: string;
  readonly version: string;
  readonly address: string;
  readonly banner: { readonly heading: string; readonly text: string } | null;
  readonly zeros: readonly Zero[];
  readonly reconciled: string;
  readonly joints: readonly (readonly string[])[];
  readonly voided: readonly (readonly string[])[];
  readonly exceptions: readonly string[];
  readonly signed: readonly string[];
}

function zerosOf({ zeros, ...system }: SystemPage, { handOver, words }: SheetTexts): Zero[] {
  const items = (rows: SystemPage['unclosedA']) =>
    rows.map(({ joint, text }) => (joint ? `${joint.tag}: ${text}` : text)).join('; ');
  const fitted = system.temporaryFittings.map(({ tag, gasket, bolts }) => {
    const what = [gasket ? words.fitting.gasket : null, bolts ? words.fitting.bolts : null];
    return `${tag} (${what.filter((each) => each !== null).join(', ')})`;
  });
  const tags = system.notProven.map(({ tag, stage }) => `${tag} (${words.stage[stage]})`);
  const some = tags.slice(0, MOST_NAMED).join(', ');
  const notProven = tags.length > MOST_NAMED ? fill(handOver.andMore, { some, count: tags.length - MOST_NAMED }) : some;
  const blinds = system.temporaryBlindsIn.map(({ number, joint }) => (joint ? `${number} (${joint.tag})` : number));
  const zero = (label: string, count: number, which: string, mustBeZero = true) => ({
    label,
    count,
    which,
    mustBeZero,
  });
  return [
    zero(handOver.notProven, zeros.notProven, notProven),
    zero(handOver.blindsIn, zeros.temporaryBlindsIn, blinds.join(', ')),
    zero(handOver.fittings, zeros.temporaryFittings, fitted.join(', ')),
    zero(handOver.unclosedA, zeros.unclosedA, items(system.unclosedA)),
    zero(handOver.unclosedB, zeros.unclosedB, items(system.unclosedB), false),
  ];
}

/** Every joint of the register falls under exactly one word, so that none is left out unseen. */
function wordOf(
  joint: JointState,
  notProven: ReadonlySet<string>,
): 'voided' | 'idle' | 'open' | 'handedOver' | 'ready' {
  if (joint.voided) return 'voided';
  const make = shownMake(joint) ?? joint.makes.at(-1);
  if (!make) return 'idle';
  if (notProven.has(joint.jointId)) return 'open';
  return make.stage === 'handed-over' ? 'handedOver' : 'ready';
}

function reconciled({ joints, system }: HandOverSource, { handOver }: SheetTexts): string {
  const counts = { handedOver: 0, ready: 0, open: 0, idle: 0, voided: 0 };
  const notProven = new Set(system.notProven.map(({ jointId }) => jointId));
  for (const joint of joints) counts[wordOf(joint, notProven)] += 1;
  return fill(handOver.reconciledLine, { listed: joints.length, ...counts });
}

function jointRow(joint: JointState, make: MakeState, source: HandOverSource, texts: SheetTexts): string[] {
  const { names, timeZone } = source;
  const { figures, words, none, someone } = texts;
  const name = (personId: string) => names[personId] ?? someone;
  const at = (instant: string | null) => (instant ? figures.localTime(instant, timeZone) : none);
  const { size, rating } = joint.specification.flange;
  return [
    joint.tag,
    `${size} ${rating}`,
    words.stage[make.stage],
    make.workedBy.map(name).join(', ') || none,
    make.checkedBy ? `${name(make.checkedBy)}, ${at(make.checkedAt)}` : none,
    make.provenAt ? `${words.proof[make.proof]}, ${at(make.provenAt)}` : words.proof[make.proof],
    at(make.handedOverAt),
  ];
}

/** What the list says, from the same answer as the hand-over screen. */
export function handOverContent(source: HandOverSource, language: PaperLanguage = 'en'): HandOverContent {
  const texts = sheetTexts(language);
  const { handOver, words, someone } = texts;
  const { system, joints, signed, timeZone } = source;
  const zeros = zerosOf(system, texts);
  const against = zeros.filter(({ count, mustBeZero }) => mustBeZero && count > 0);
  const standing = joints.filter((joint) => joint.voided === null);
  const events = joints.flatMap(({ makes }) => makes.flatMap(({ lastEventAt }) => (lastEventAt ? [lastEventAt] : [])));
  const latest = signed.at(-1);
  return {
    recordedAt: events.sort().at(-1) ?? source.printedAt,
    heading: `${system.code} ${system.name}`,
    head: [source.site, source.shutdown, ...(system.area ? [`${system.area.code} ${system.area.name}`] : [])].join(
      ' · ',
    ),
    version: fill(texts.printedAt, { printed: texts.figures.localTime(source.printedAt, timeZone) }),
    address: source.address,
    banner:
      against.length === 0
        ? null
        : {
            heading: handOver.notReady,
            text: fill(handOver.notReadyText, {
              what: against.map(({ label, count }) => `${label}: ${count}`).join(', '),
            }),
          },
    zeros,
    reconciled: reconciled(source, texts),
    joints: standing.flatMap((joint) => {
      const make = shownMake(joint) ?? joint.makes.at(-1);
      return make ? [jointRow(joint, make, source, texts)] : [];
    }),
    voided: joints.flatMap(({ tag, voided }) =>
      voided ? [[tag, `${words.voidWhy[voided.why]}: ${voided.reason}`]] : [],
    ),
    exceptions: latest?.exceptions ?? system.offer?.exceptions ?? [],
    signed: signed.map(({ type, signature }) =>
      fill(handOver.signedLine, {
        what: type === 'handed-over' ? handOver.taken : handOver.offered,
        name: source.names[signature.personId] ?? someone,
        role: texts.report.roles[signature.role as keyof typeof texts.report.roles] ?? signature.role,
        at: texts.figures.localTime(signature.signedAt, timeZone),
        meaning: signature.meaning,
      }),
    ),
  };
}
