import type { CommandAnswer, Payload, ProblemBody, ShutdownEventType, SiteEventType } from '@seatwell/contract';
import { CATALOGUE } from '@seatwell/workflow';
import { prepareBatch, recordBatch } from '../../apps/server/src/features/recording/record-batch.ts';
import { recordCommand } from '../../apps/server/src/features/recording/record-command.ts';
import type { Database } from '../../apps/server/src/platform/database/pool.ts';
import { Problem } from '../../apps/server/src/platform/errors/problem.ts';
import { type Actor, loadActor } from '../../apps/server/src/platform/sign-in/sessions.ts';
import type { SeededRandom } from './random.ts';

export interface DemoActor {
  readonly actor: Actor;
  readonly secret: string;
}

interface Options {
  readonly makeId?: string | null;
  readonly versionSeen?: number | null;
  readonly performedBy?: readonly string[];
  readonly alreadyDone?: boolean;
}

/**
 * Tells the story through the command path of real use: the same rules, signatures and records, with the clock of the
 * story in place of the server's.
 */
export class Recorder {
  readonly db: Database;
  readonly random: SeededRandom;
  shutdownId = '';
  /** the time of the story; it only runs forward */
  now: Date;

  constructor(db: Database, random: SeededRandom, startsAt: Date) {
    this.db = db;
    this.random = random;
    this.now = startsAt;
  }

  id(): string {
    return this.random.uuid(this.now);
  }

  /** Lets the clock run to a moment, never back. */
  until(moment: Date): void {
    if (moment > this.now) this.now = moment;
  }

  minutes(count: number): void {
    this.now = new Date(this.now.getTime() + count * 60_000);
  }

  async actor(siteId: string, accountId: string, secret: string): Promise<DemoActor> {
    const actor = await loadActor(this.db, siteId, accountId);
    if (!actor) throw new Error(`The demo has no account ${accountId}.`);
    return { actor, secret };
  }

  #parts() {
    return { db: this.db, clock: () => this.now };
  }

  #envelope(type: SiteEventType | ShutdownEventType, who: DemoActor, subjectId: string, options: Options) {
    return {
      eventId: this.id(),
      v: 1 as const,
      subjectId,
      makeId: options.makeId ?? null,
      deviceTime: this.now.toISOString(),
      clockOffset_ms: 0,
      device: 'demo',
      performedBy: options.performedBy ?? [],
      versionSeen: options.versionSeen ?? null,
      alreadyDone: options.alreadyDone ?? false,
      signature: CATALOGUE[type].signed ? { secret: who.secret, meaning: CATALOGUE[type].effect } : null,
    };
  }

  site<T extends SiteEventType>(
    who: DemoActor,
    type: T,
    subjectId: string,
    payload: Payload<T>,
  ): Promise<CommandAnswer> {
    const command = { ...this.#envelope(type, who, subjectId, {}), payload };
    return this.#told(type, recordCommand(this.#parts(), who.actor, { shutdownId: null }, type, command));
  }

  tell<T extends ShutdownEventType>(
    who: DemoActor,
    type: T,
    subjectId: string,
    payload: Payload<T>,
    options: Options = {},
  ): Promise<CommandAnswer> {
    const command = { ...this.#envelope(type, who, subjectId, options), payload };
    return this.#told(type, recordCommand(this.#parts(), who.actor, { shutdownId: this.shutdownId }, type, command));
  }

  /** A list under one decision; a joint that a rule stops fails the demo, so that the story stays true to the rules. */
  async list<T extends ShutdownEventType>(
    who: DemoActor,
    type: T,
    rows: readonly { jointId: string; makeId: string; payload: Payload<T> }[],
    options: Options = {},
  ): Promise<void> {
    if (rows.length === 0) return;
    const seen = await this.versions(rows.map((row) => row.jointId));
    const batch = {
      ...this.#envelope(type, who, this.shutdownId, options),
      mode: 'all' as const,
      rows: rows.map((row) => ({ ...row, versionSeen: seen.get(row.jointId) ?? null })),
    };
    const parts = this.#parts();
    await this.#told(
      type,
      prepareBatch(parts, who.actor, this.shutdownId, type, batch).then((prepared) =>
        recordBatch(parts, who.actor, this.shutdownId, type, batch, prepared),
      ),
    );
  }

  async versions(jointIds: readonly string[]): Promise<Map<string, number>> {
    const { rows } = await this.db.query<{ joint_id: string; version: number }>(
      'SELECT joint_id, version FROM joint WHERE shutdown_id = $1 AND joint_id = ANY($2::uuid[])',
      [this.shutdownId, jointIds],
    );
    return new Map(rows.map((row) => [row.joint_id, row.version]));
  }

  async #told<A>(type: string, recording: Promise<A>): Promise<A> {
    try {
      return await recording;
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      const body = error.body('') as unknown as ProblemBody;
      const rules = body.errors.map((item) => `${item.code} ${item.message}`).join('; ');
      throw new Error(`The demo's “${type}” was refused: ${body.detail} ${rules}`, { cause: error });
    }
  }
}
