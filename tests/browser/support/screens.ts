import type { ChoicesAnswer, PeopleAnswer, ProceduresAnswer, RegisterAnswer } from '@seatwell/contract';
import type { BrowserContext } from 'playwright-core';
import { demoShutdownId, read } from './people.ts';

/** What stands for the `$names` in the addresses. */
export interface Places {
  readonly shutdownId: string;
  readonly jointId: string;
  readonly packId: string;
  readonly systemId: string;
  readonly procedureId: string;
  readonly personId: string;
  readonly what: string;
}

export interface Screen {
  /** the route as apps/web/src/routes writes it */
  readonly route: string;
  readonly name: string;
  /** whose screen it is; undefined before the sign-in */
  readonly as?: string;
  /** only on a server that nobody has set up yet */
  readonly emptySite?: true;
  /** a joint that the screen is about, if not any */
  readonly joint?: (row: RegisterAnswer['rows'][number]) => boolean;
}

const inShutdown = (path: string) => `/shutdowns/$shutdownId${path}`;
const isTightened = ({ stage }: { stage: string }) => ['nipped-up', 'part-tight'].includes(stage);

/** Every screen of the web app, each once, with the person who uses it. */
export const screens: readonly Screen[] = [
  { route: '/sign-in', name: 'sign-in' },
  { route: '/first-visit', name: 'first-visit', emptySite: true },
  { route: '/', name: 'start', as: 'coordinator' },
  { route: '/shutdowns', name: 'shutdowns', as: 'coordinator' },
  { route: '/me', name: 'me', as: 'technician' },
  { route: '/calculate', name: 'calculate', as: 'engineer' },
  { route: '/calculate/simulation', name: 'simulation', as: 'engineer' },
  { route: '/site/procedures', name: 'procedures', as: 'engineer' },
  { route: '/site/procedures/$procedureId', name: 'procedure', as: 'engineer' },
  { route: '/site/data', name: 'data', as: 'engineer' },
  { route: '/site/people', name: 'people', as: 'coordinator' },
  { route: '/site/people/$personId', name: 'person', as: 'coordinator' },
  { route: '/site/accounts', name: 'accounts', as: 'administrator' },
  { route: '/site/server', name: 'server', as: 'administrator' },
  { route: '/site/tools', name: 'tools', as: 'inspector' },
  { route: inShutdown('/import'), name: 'import', as: 'coordinator' },
  { route: inShutdown(''), name: 'shutdown-start', as: 'technician' },
  { route: inShutdown('/today'), name: 'today', as: 'coordinator' },
  { route: inShutdown('/areas'), name: 'areas', as: 'coordinator' },
  { route: inShutdown('/report'), name: 'report', as: 'management' },
  { route: inShutdown('/reviews'), name: 'reviews', as: 'engineer' },
  { route: inShutdown('/found-joints'), name: 'found-joints', as: 'coordinator' },
  { route: inShutdown('/packs'), name: 'packs', as: 'coordinator' },
  { route: inShutdown('/packs/$packId'), name: 'pack', as: 'coordinator' },
  { route: inShutdown('/systems'), name: 'systems', as: 'coordinator' },
  { route: inShutdown('/punch-items'), name: 'punch-items', as: 'coordinator' },
  { route: inShutdown('/permits'), name: 'permits', as: 'operations' },
  { route: inShutdown('/blinds'), name: 'blinds', as: 'coordinator' },
  { route: inShutdown('/items'), name: 'items', as: 'coordinator' },
  { route: inShutdown('/talks'), name: 'talks', as: 'coordinator' },
  { route: inShutdown('/register'), name: 'register', as: 'coordinator' },
  { route: inShutdown('/register/add'), name: 'add-joint', as: 'coordinator' },
  { route: inShutdown('/joints/$jointId/edit'), name: 'edit-joint', as: 'coordinator' },
  { route: inShutdown('/joints/$jointId'), name: 'joint', as: 'engineer' },
  { route: inShutdown('/joints/$jointId/target'), name: 'target', as: 'engineer' },
  { route: inShutdown('/setup'), name: 'setup', as: 'coordinator' },
  { route: inShutdown('/my-joints'), name: 'my-joints', as: 'technician' },
  { route: inShutdown('/joints/$jointId/work'), name: 'work', as: 'technician' },
  {
    route: inShutdown('/joints/$jointId/tighten'),
    name: 'tighten',
    as: 'technician',
    joint: isTightened,
  },
  { route: inShutdown('/sign/$what'), name: 'sign', as: 'operations' },
  { route: inShutdown('/found'), name: 'found', as: 'technician' },
  { route: inShutdown('/talk'), name: 'talk', as: 'chargehand' },
  { route: inShutdown('/packs/$packId/test'), name: 'pack-test', as: 'inspector' },
  { route: inShutdown('/systems/$systemId/hand-over'), name: 'hand-over', as: 'coordinator' },
];

/** Finds in the demo what an address needs. @param context of the coordinator */
export async function demoPlaces(context: BrowserContext): Promise<(screen: Screen) => string> {
  const shutdownId = await demoShutdownId(context);
  const below = `/shutdowns/${shutdownId}`;
  const [choices, { rows }, procedures, people] = await Promise.all([
    read<ChoicesAnswer>(context, `${below}/choices`),
    read<RegisterAnswer>(context, `${below}/joints?limit=300`),
    read<ProceduresAnswer>(context, '/procedures'),
    read<PeopleAnswer>(context, '/people'),
  ]);
  const places: Places = {
    shutdownId,
    jointId: rows.find((row) => row.stage === 'tight')?.jointId ?? '',
    packId: choices.packs[0]?.packId ?? '',
    systemId: choices.systems[0]?.systemId ?? '',
    procedureId: procedures.rows[0]?.procedureId ?? '',
    personId: people.rows[0]?.personId ?? '',
    what: 'release',
  };
  return ({ route, joint }) => {
    const ofScreen = joint ? { ...places, jointId: rows.find(joint)?.jointId ?? '' } : places;
    return route.replaceAll(/\$(\w+)/g, (_all, name: keyof Places) => {
      if (!ofScreen[name]) throw new Error(`The demo has nothing for "${name}" of ${route}.`);
      return ofScreen[name];
    });
  };
}
