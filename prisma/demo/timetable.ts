const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

export interface Step {
  readonly at: Date;
  readonly run: () => Promise<unknown>;
}

/** What happens when: steps are put down in any order and played in the order of their times, up to the present. */
export class Timetable {
  readonly #steps: Step[] = [];

  put(at: Date, run: Step['run']): void {
    this.#steps.push({ at, run });
  }

  /** Plays every step up to `present`; steps that others put down meanwhile are played as well. */
  async play(present: Date, arrive: (at: Date) => void, progress: (share: number) => void): Promise<void> {
    const order = (a: Step, b: Step) => a.at.getTime() - b.at.getTime();
    const steps = [...this.#steps].filter((step) => step.at <= present).sort(order);
    for (const [index, step] of steps.entries()) {
      arrive(step.at);
      await step.run();
      if (index % 100 === 0) progress(index / steps.length);
    }
  }
}

/** A crew's working time: it runs through its shifts and skips the hours between them. */
export class CrewClock {
  #at: Date;
  readonly #startHour: number;
  readonly #hours: number;

  /** @param midnight the first day, at midnight of the site; the shift begins at `startHour` and lasts `hours` */
  constructor(midnight: Date, startHour: number, hours: number) {
    this.#startHour = startHour;
    this.#hours = hours;
    this.#at = new Date(midnight.getTime() + (startHour + 0.5) * HOUR_MS);
    this.#midnight = midnight;
  }

  #midnight: Date;

  get at(): Date {
    return this.#at;
  }

  /** Takes a stretch of work; one that the shift cannot hold begins with the next. */
  take(minutes: number): { from: Date; to: Date } {
    const shiftEnd = this.#midnight.getTime() + (this.#startHour + this.#hours) * HOUR_MS;
    if (this.#at.getTime() + minutes * 60_000 > shiftEnd) this.nextShift();
    const from = this.#at;
    this.#at = new Date(from.getTime() + minutes * 60_000);
    return { from, to: this.#at };
  }

  /** Begins the next shift where this one cannot hold all of a stretch of work. */
  keepTogether(minutes: number): void {
    const shiftEnd = this.#midnight.getTime() + (this.#startHour + this.#hours) * HOUR_MS;
    if (this.#at.getTime() + minutes * 60_000 > shiftEnd) this.nextShift();
  }

  nextShift(): void {
    this.#midnight = new Date(this.#midnight.getTime() + DAY_MS);
    this.#at = new Date(this.#midnight.getTime() + (this.#startHour + 0.5) * HOUR_MS);
  }
}

export const daysAfter = (from: Date, days: number): Date => new Date(from.getTime() + days * DAY_MS);
export const hoursAfter = (from: Date, hours: number): Date => new Date(from.getTime() + hours * HOUR_MS);
