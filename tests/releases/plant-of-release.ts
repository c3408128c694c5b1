import pg from 'pg';
import { uuidv7 } from 'uuidv7';
import { writeBackup } from '../../apps/server/src/platform/backup/write-backup.ts';
import { createTestDatabase } from '../api/support/database.ts';
import { startTestPostgres } from '../api/support/database-server.ts';
import { accepted, acceptedList, listCommand, siteCommand } from '../api/support/plant.ts';
import { listJoint, openShutdownOn, type Shutdown } from '../api/support/shutdown.ts';
import {
  engineer,
  jointState,
  onMake,
  openAndNipUp,
  passOf,
  release,
  testAndProve,
  tighten,
} from '../api/support/work.ts';

/** A small plant in the middle of its work, written to a backup by this release: what later ones must be able to read. */
export async function writePlant(file: string, version: string): Promise<void> {
  const server = await startTestPostgres();
  const database = await createTestDatabase(server.superuserUrl);
  const shutdown = await openShutdownOn(database);
  await work(shutdown);
  await forgetSomebody(shutdown);
  const client = new pg.Client({ connectionString: database.url });
  await client.connect();
  await writeBackup(client, file, version);
  await client.end();
  await shutdown.close();
  await server.stop();
}

/** Joints at most stages, one of them left part tight, one with a hold, and a decision over a list. */
async function work(shutdown: Shutdown): Promise<void> {
  const joints = [];
  for (let count = 0; count < 6; count += 1) joints.push(await listJoint(shutdown, { tag: `R-${count + 1}` }));
  const [proven, tight, partTight, nippedUp, listed, held] = joints;
  if (!proven || !tight || !partTight || !nippedUp || !listed || !held) throw new Error('six joints were listed');
  for (const joint of [proven, tight, partTight, nippedUp]) {
    await engineer(shutdown, joint);
    await release(shutdown, joint);
    await openAndNipUp(shutdown, joint);
  }
  await tighten(shutdown, tight);
  await tighten(shutdown, proven);
  await onMake(shutdown, proven).must(shutdown.chargehand, 'checked', {
    level: 'chargehand',
    outcome: 'accepted',
    reason: null,
  });
  await testAndProve(shutdown, [proven]);
  await onMake(shutdown, partTight).must(shutdown.technician, 'pass-recorded', await passOf(shutdown, partTight, 1));
  await onMake(shutdown, held).must(shutdown.inspector, 'hold-placed', {
    holdId: uuidv7(),
    reason: 'Drawing asked about',
    releasedBy: 'engineer',
  });
  const { plant, coordinator, shutdownId, crewId } = shutdown;
  const rows = await Promise.all(
    [listed, held].map(async ({ jointId, makeId }) => ({
      jointId,
      makeId,
      versionSeen: (await jointState(shutdown, jointId)).version,
      payload: { crewId, plannedOn: '2027-03-12' },
    })),
  );
  acceptedList(await listCommand(plant, coordinator, shutdownId, 'make-assigned', rows));
}

async function forgetSomebody({ plant }: Shutdown): Promise<void> {
  const personId = uuidv7();
  const accountId = uuidv7();
  const { administrator } = plant;
  const person = { personId, name: 'Petra Forgotten', company: 'Contractor', badge: null, trade: 'fitter' };
  accepted(await siteCommand(plant, administrator, 'person-registered', personId, person));
  const account = { accountId, personId, email: 'petra.forgotten@plant.example' };
  accepted(await siteCommand(plant, administrator, 'account-opened', accountId, account));
  accepted(await siteCommand(plant, administrator, 'account-closed', accountId, { reason: 'Left' }));
  accepted(await siteCommand(plant, administrator, 'person-erased', personId, { reason: 'Asked for' }));
}
