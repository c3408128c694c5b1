import type { CommandAnswer, Payload, ShutdownEventType } from '@seatwell/contract';
import { CATALOGUE } from '@seatwell/workflow';
import type supertest from 'supertest';
import { uuidv7 } from 'uuidv7';
import { accepted, type CommandOptions, command, type SignedIn } from './plant.ts';
import { type JointOptions, type ListedJoint, listJoint, type Shutdown } from './shutdown.ts';
import { SOUND } from './sound.ts';
import { jointState, makeState, wait } from './work.ts';

const DAY_MS = 86_400_000;

/** Sets the clock to the next morning in the middle of the day shift: a tale begins and ends within one. */
export function nextMorning({ plant }: Shutdown): void {
  const day = Math.floor(plant.now.getTime() / DAY_MS) + 1;
  plant.now = new Date(day * DAY_MS + 6 * 3_600_000);
}

/** What is said otherwise than the sound command says it. */
export interface Said<T extends ShutdownEventType = ShutdownEventType> extends CommandOptions {
  readonly change?: Partial<Payload<T>>;
  /** said instead of the sound payload */
  readonly payload?: Payload<T>;
  readonly by?: SignedIn;
}

/**
 * The tale of one joint, told through the API by those who work on it. It has a test pack and a system of its own,
 * so that no other joint stands in its way.
 */
export class Tale {
  readonly shutdown: Shutdown;
  readonly joint: ListedJoint;
  readonly packId: string;
  readonly systemId: string;
  makeId: string;
  /** the last event of each type */
  readonly events: Partial<Record<ShutdownEventType, string>> = {};

  constructor(shutdown: Shutdown, joint: ListedJoint, packId: string, systemId: string) {
    this.shutdown = shutdown;
    this.joint = joint;
    this.packId = packId;
    this.systemId = systemId;
    this.makeId = joint.makeId;
  }

  get jointId(): string {
    return this.joint.jointId;
  }

  state = () => jointState(this.shutdown, this.jointId);
  make = () => makeState(this.shutdown, this.joint, this.makeId);
  stage = async () => (await this.make()).stage;

  /** Sends the sound command of a type with some of it said otherwise; answers the raw response. */
  async say<T extends ShutdownEventType>(type: T, said: Said<T> = {}): Promise<supertest.Response> {
    const { change, payload, by, ...options } = said;
    const sound = await SOUND[type](this);
    const eventId = options.eventId ?? uuidv7();
    const aboutMake = CATALOGUE[type].subject === 'make' || CATALOGUE[type].subject === 'joint';
    const response = await command(
      this.shutdown.plant,
      by ?? sound.by,
      this.shutdown.shutdownId,
      type,
      sound.subjectId ?? this.jointId,
      { ...(payload ?? sound.payload), ...change } as Payload<T>,
      {
        ...(aboutMake ? { makeId: this.makeId } : {}),
        versionSeen: sound.versionSeen ?? (await this.state()).version,
        ...(sound.performedBy ? { performedBy: sound.performedBy } : {}),
        ...options,
        eventId,
      },
    );
    if (response.status === 200) this.events[type] = eventId;
    return response;
  }

  /** Says it, and it must be accepted; the clock then goes on by a quarter of an hour. */
  async tell<T extends ShutdownEventType>(type: T, said: Said<T> = {}): Promise<CommandAnswer> {
    const answer = accepted(await this.say(type, said));
    wait(this.shutdown, 15);
    return answer;
  }

  /** Goes on from the step after `from` (or from the beginning) to `to`. */
  async goOn(to: Point, from?: Point): Promise<this> {
    const names = Object.keys(STEPS) as Point[];
    for (const name of names.slice(from ? names.indexOf(from) + 1 : 0, names.indexOf(to) + 1)) await STEPS[name](this);
    return this;
  }

  eventId(type: ShutdownEventType): string {
    const eventId = this.events[type];
    if (!eventId) throw new Error(`${this.joint.tag} has no ${type} yet.`);
    return eventId;
  }
}

const STEPS = {
  listed: async () => {},
  'procedure assigned': (tale) => tale.tell('procedure-assigned'),
  engineered: (tale) => tale.tell('target-approved'),
  released: (tale) => tale.tell('break-released'),
  open: (tale) => tale.tell('opened'),
  'faces accepted': (tale) => tale.tell('faces-inspected'),
  'nipped up': (tale) => tale.tell('nipped-up'),
  'first pass': (tale) => tale.tell('pass-recorded'),
  'every pass': async (tale) => {
    await tale.tell('pass-recorded');
    await tale.tell('pass-recorded');
  },
  tight: (tale) => tale.tell('final-round-recorded'),
  checked: async (tale) => {
    const { criticality } = await tale.state();
    if (criticality === 'A') await tale.tell('witnessed');
    await tale.tell('checked');
  },
  tested: async (tale) => {
    await tale.tell('pack-released');
    wait(tale.shutdown, 45);
    await tale.tell('test-reading');
  },
  proven: (tale) => tale.tell('proven'),
  offered: (tale) => tale.tell('hand-over-offered'),
  'handed over': (tale) => tale.tell('handed-over'),
} satisfies Record<string, (tale: Tale) => Promise<unknown>>;

export type Point = keyof typeof STEPS;

/** Lists a joint in a pack and system of its own and tells its life up to a point. */
export async function taleTo(shutdown: Shutdown, point: Point, options: JointOptions = {}): Promise<Tale> {
  nextMorning(shutdown);
  const { plant, shutdownId, coordinator, areaId } = shutdown;
  const systemId = uuidv7();
  const packId = uuidv7();
  const code = systemId.slice(-8);
  accepted(
    await command(plant, coordinator, shutdownId, 'system-listed', systemId, { systemId, areaId, code, name: 'Feed' }),
  );
  accepted(
    await command(plant, coordinator, shutdownId, 'pack-planned', packId, {
      packId,
      number: `TP-${code}`,
      systemId,
      areaId,
      way: 'hydrotest',
      medium: 'water',
      pressure_MPa: 3,
      pressureAsEntered: { value: 30, unit: 'bar' },
      hold_min: 30,
      plannedOn: null,
    }),
  );
  const joint = await listJoint(
    { ...shutdown, systemId },
    {
      ...options,
      makes: (options.makes ?? [{}]).map((make) => ({ packs: [{ packId, role: 'inside' as const }], ...make })),
    },
  );
  return new Tale(shutdown, joint, packId, systemId).goOn(point);
}
