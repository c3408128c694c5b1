import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, command, refusedBy } from '../support/plant.ts';
import { specification } from '../support/sample-plant.ts';
import { type JointOptions, openShutdown, type Shutdown } from '../support/shutdown.ts';
import { type Tale, taleTo } from '../support/tale.ts';
import { faces, nippedUp } from '../support/work.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

/** A spectacle blind between two flanges: one set of studs, two gaskets, four faces. */
const insert: JointOptions = {
  kind: 'insert',
  specification: specification({
    bolting: { count: 12, thread: '7/8-9 UNC', grade: 'B7', nutGrade: '2H', length_mm: 165 },
    gasket: { ...specification().gasket, count: 2 },
    clampedParts: [
      { kind: 'flange', thickness_mm: 39.7, note: null },
      { kind: 'gasket', thickness_mm: 4.5, note: null },
      { kind: 'spectacle', thickness_mm: 20, note: null },
      { kind: 'gasket', thickness_mm: 4.5, note: null },
      { kind: 'flange', thickness_mm: 39.7, note: null },
    ],
  }),
};

async function blindMoves(blindId: string, type: 'blind-in' | 'blind-out'): Promise<void> {
  const { plant, technician, shutdownId } = shutdown;
  const said = { photo: null, remark: null };
  const payload = type === 'blind-in' ? { tagHung: true, ...said } : said;
  accepted(await command(plant, technician, shutdownId, type, blindId, payload as never));
}

const planBlind = async (tale: Tale): Promise<string> => {
  const blindId = uuidv7();
  accepted(
    await command(shutdown.plant, shutdown.coordinator, shutdown.shutdownId, 'blind-planned', blindId, {
      blindId,
      number: `SP-${blindId.slice(-6)}`,
      type: 'spade',
      rating: '300',
      thickness_mm: 22,
      purpose: 'isolation',
      jointId: tale.jointId,
      packId: null,
      owner: 'operations',
      outBy: null,
    }),
  );
  return blindId;
};

describe('an insert joint', () => {
  it('is not accepted on two of its four faces, nor with one of its two gaskets', async () => {
    const tale = await taleTo(shutdown, 'open', insert);
    expect(refusedBy(await tale.say('faces-inspected', { change: { faces: faces(2) } }))).toEqual(['faces.every-face']);
    await tale.goOn('faces accepted', 'open');
    const one = { change: { gasket: { ...nippedUp(shutdown).gasket, count: 1 } } };
    expect(refusedBy(await tale.say('nipped-up', one))).toEqual(['nipped-up.gasket-count']);
    await tale.goOn('handed over', 'faces accepted');
    expect(await tale.stage()).toBe('handed-over');
    expect((await tale.make()).fitted?.gasketCount).toBe(2);
  });
});

describe('a spaded joint', () => {
  it('is closed twice: with its spade and temporary bolts, and for good once the spade is out', async () => {
    const tale = await taleTo(shutdown, 'faces accepted', {
      makes: [{ purpose: 'spade-in', proof: 'service-test' }, {}],
    });
    const [spadeIn = '', final = ''] = tale.joint.makeIds;
    const blindId = await planBlind(tale);
    await blindMoves(blindId, 'blind-in');
    await tale.tell('nipped-up', {
      change: {
        gasket: { ...nippedUp(shutdown).gasket, purpose: 'spade-in' },
        bolting: { ...nippedUp(shutdown).bolting, temporary: true },
      },
    });
    await tale.goOn('checked', 'nipped up');

    const temporary = async () =>
      (
        await shutdown.plant.db.query(
          'SELECT make_id FROM make WHERE shutdown_id = $1 AND joint_id = $2 AND temporary_fitting',
          [shutdown.shutdownId, tale.jointId],
        )
      ).rows.map((row) => row.make_id);
    expect(await temporary()).toEqual([spadeIn]);

    tale.makeId = final;
    await tale.goOn('open', 'listed');
    await blindMoves(blindId, 'blind-out');
    await tale.goOn('handed over', 'open');
    expect(await tale.stage()).toBe('handed-over');
    expect(await temporary()).toEqual([]);
    // The first make is history: what is recorded on it now would be lost for the second.
    tale.makeId = spadeIn;
    expect(refusedBy(await tale.say('loosened'))).toContain('make.in-work');
  });

  it('is not handed over while its spade is in', async () => {
    const tale = await taleTo(shutdown, 'proven');
    const blindId = await planBlind(tale);
    await blindMoves(blindId, 'blind-in');
    const again = { tagHung: true, photo: null, remark: null };
    const twice = await command(shutdown.plant, shutdown.technician, shutdown.shutdownId, 'blind-in', blindId, again);
    expect(twice.status).toBe(409);
    expect(refusedBy(await tale.say('hand-over-offered'))).toEqual(['handed-over.no-temporary-blinds']);
  });
});

describe('a joint opened after its test', () => {
  it('gets another make, and is handed over on that one only', async () => {
    const tale = await taleTo(shutdown, 'proven');
    const makeId = uuidv7();
    await tale.tell('make-planned', { change: { makeId } });
    const first = tale.makeId;
    tale.makeId = makeId;
    await tale.goOn('open', 'listed');
    tale.makeId = first;
    expect(refusedBy(await tale.say('handed-over'))).toEqual(
      expect.arrayContaining(['make.in-work', 'handed-over.joints-reconciled']),
    );
    tale.makeId = makeId;
    await tale.goOn('handed over', 'open');
    expect((await tale.state()).makes.map((make) => make.stage)).toEqual(['proven', 'handed-over']);
  });
});

describe('each work scope', () => {
  const scoped = (workScope: 'new' | 'retighten-ambient' | 'test-only') => ({ makes: [{ workScope }] });

  it('a new joint has no release and no opening', async () => {
    const tale = await taleTo(shutdown, 'engineered', scoped('new'));
    expect(refusedBy(await tale.say('break-released'))).toEqual(['released.engineered-first']);
    expect(refusedBy(await tale.say('opened'))).toContain('open.released-first');
    await tale.goOn('handed over', 'open');
    expect(await tale.stage()).toBe('handed-over');
  });

  it('a joint retightened cold keeps its gasket: released, tightened, checked, proven', async () => {
    const tale = await taleTo(shutdown, 'released', scoped('retighten-ambient'));
    expect(refusedBy(await tale.say('opened'))).toEqual(['open.released-first']);
    expect(refusedBy(await tale.say('nipped-up'))).toContain('nipped-up.faces-first');
    await tale.goOn('handed over', 'nipped up');
    expect(await tale.stage()).toBe('handed-over');
    expect((await tale.make()).fitted).toBeNull();
  });

  it('a joint that is only tested has no target and goes from planned to proven', async () => {
    const tale = await taleTo(shutdown, 'procedure assigned', scoped('test-only'));
    expect(refusedBy(await tale.say('target-approved'))).toEqual(['engineered.before-tightening']);
    expect(refusedBy(await tale.say('checked'))).toEqual(['checked.tight-first']);
    await tale.goOn('handed over', 'checked');
    expect(await tale.stage()).toBe('handed-over');
  });
});
