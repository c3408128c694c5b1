import { uuidv7 } from 'uuidv7';
import { finalMake } from '../../api/support/sample-plant.ts';
import type { KeptCommand, RecordingClient } from './recording-client.ts';

export interface Sent {
  readonly acknowledged: KeptCommand[];
  readonly refused: KeptCommand[];
  /** whose answer never came */
  readonly open: KeptCommand[];
}

interface Known {
  readonly jointId: string;
  readonly makeId: string;
  version: number;
}

const UNKNOWN_SERVICE = {
  medium: null,
  pressure_MPa: null,
  pressureAsEntered: null,
  temperature_C: null,
  temperatureAsEntered: null,
};

export function listed(client: RecordingClient): { command: KeptCommand; joint: Known } {
  const jointId = uuidv7();
  const makeId = uuidv7();
  const command = client.keep('joint-listed', jointId, {
    placeId: uuidv7(),
    tag: `J-${jointId.slice(-10)}`,
    kind: 'flange-pair',
    criticality: 'C',
    whereabouts: {
      areaId: null,
      systemId: null,
      line: null,
      location: null,
      drawing: null,
      item: null,
      viewedFrom: null,
      bolt1At: null,
    },
    specification: {
      flange: { standard: 'ASME-B16.5', size: 'NPS8', rating: '300', facing: 'raised-face' },
      bolting: null,
      gasket: {
        family: 'spiral-wound',
        detail: null,
        count: 1,
        contactInside_mm: null,
        contactOutside_mm: null,
        thickness_mm: null,
      },
      clampedParts: [],
      service: UNKNOWN_SERVICE,
      hotExposed: false,
    },
    makes: [finalMake(makeId)],
    remark: null,
  });
  return { command, joint: { jointId, makeId, version: 1 } };
}

/** What follows on a joint: a hold, an opening told before its release, a decision by the version last known. */
function followUps(client: RecordingClient, { jointId, makeId, version }: Known): KeptCommand[] {
  return [
    client.keep('hold-placed', jointId, { holdId: uuidv7(), reason: 'Drawing asked about', releasedBy: 'engineer' }),
    client.keep(
      'opened',
      jointId,
      { zeroEnergyChecks: [], cautionShown: true, openEndsCovered: true, remark: null },
      { makeId, alreadyDone: true },
    ),
    client.keep(
      'joint-specified',
      jointId,
      { remark: 'Seen in the field', reason: null },
      { versionSeen: version + 2 },
    ),
    client.keep('joint-specified', jointId, { remark: 'Seen by another', reason: null }, { versionSeen: version }),
  ];
}

/**
 * Several people list joints and record on them until an answer stays out.
 * @param onAnswer told the number of answers so far
 */
export async function workUntilBroken(
  client: RecordingClient,
  people: number,
  onAnswer: (count: number) => void,
): Promise<Sent> {
  const sent: Sent = { acknowledged: [], refused: [], open: [] };
  let answers = 0;
  const tell = async (command: KeptCommand): Promise<boolean> => {
    const status = await client.send(command);
    if (status === null || status >= 500) {
      sent.open.push(command);
      return false;
    }
    (status === 200 ? sent.acknowledged : sent.refused).push(command);
    answers += 1;
    onAnswer(answers);
    return true;
  };
  const person = async () => {
    for (;;) {
      const { command, joint } = listed(client);
      if (!(await tell(command))) return;
      for (const next of followUps(client, joint)) if (!(await tell(next))) return;
    }
  };
  await Promise.all(Array.from({ length: people }, person));
  return sent;
}
