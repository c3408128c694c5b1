import { uuidv7 } from 'uuidv7';
import { accepted, command } from './plant.ts';
import { specification } from './sample-plant.ts';
import type { Shutdown } from './shutdown.ts';
import { type Point, Tale, taleTo } from './tale.ts';

/** A joint that a technician found beside a pump, as it comes: nothing is known of it. */
export async function foundJoint(shutdown: Shutdown): Promise<Tale> {
  const { plant, technician, shutdownId, areaId } = shutdown;
  // Its pack and system are those of a joint of the register; it is in neither.
  const beside = await taleTo(shutdown, 'listed');
  const jointId = uuidv7();
  const makeId = uuidv7();
  const tag = `F-${jointId.slice(-6)}`;
  accepted(
    await command(plant, technician, shutdownId, 'joint-found', jointId, {
      placeId: uuidv7(),
      temporaryNumber: tag,
      nearest: 'pump P-101',
      areaId,
      size: 'NPS8',
      rating: '300',
      photo: null,
      makeId,
      remark: null,
    }),
  );
  return new Tale(shutdown, { jointId, makeId, makeIds: [makeId], tag }, beside.packId, beside.systemId);
}

/** A found joint that the coordinator has specified, told up to a point of its life. */
export async function foundTo(shutdown: Shutdown, point: Point): Promise<Tale> {
  const found = await foundJoint(shutdown);
  await found.tell('joint-specified', { change: { specification: specification(), criticality: 'C' } });
  return found.goOn(point, 'listed');
}
