import { addJointRoute } from './add-joint.ts';
import { calculateRoute, simulationRoute } from './calculate.ts';
import { dataRoute } from './data.ts';
import { editJointRoute } from './edit-joint.ts';
import { foundRoute, handOverRoute, packTestRoute, signRoute, talkRoute } from './field.ts';
import { firstVisitRoute } from './first-visit.ts';
import { importRoute } from './import.ts';
import { jointRoute } from './joint.ts';
import { meRoute } from './me.ts';
import { myJointsRoute } from './my-joints.ts';
import { operatingRoute } from './operating.ts';
import { areasRoute, foundJointsRoute, reportRoute, reviewsRoute, todayRoute } from './overview.ts';
import {
  blindsRoute,
  itemsRoute,
  packRoute,
  packsRoute,
  permitsRoute,
  punchItemsRoute,
  systemsRoute,
  talksRoute,
} from './packs.ts';
import { accountsRoute, peopleRoute, personRoute, toolsRoute } from './people.ts';
import { procedureRoute } from './procedure.ts';
import { proceduresRoute } from './procedures.ts';
import { registerRoute } from './register.ts';
import { rootRoute } from './root.ts';
import { setupRoute } from './setup.ts';
import { shutdownRoute } from './shutdown.ts';
import { shutdownStartRoute } from './shutdown-start.ts';
import { shutdownsRoute } from './shutdowns.ts';
import { signInRoute } from './sign-in.ts';
import { signedInRoute } from './signed-in.ts';
import { startRoute } from './start.ts';
import { targetRoute } from './target.ts';
import { tightenRoute, workRoute } from './work.ts';

// One line per route. Before the sign-in: below the root; of the site: below signedIn; of a shutdown: below shutdown.
export const routeTree = rootRoute.addChildren([
  signInRoute,
  firstVisitRoute,
  signedInRoute.addChildren([
    startRoute,
    shutdownsRoute,
    meRoute,
    calculateRoute,
    simulationRoute,
    proceduresRoute,
    procedureRoute,
    dataRoute,
    peopleRoute,
    personRoute,
    accountsRoute,
    toolsRoute,
    operatingRoute,
    shutdownRoute.addChildren([
      importRoute,
      shutdownStartRoute,
      todayRoute,
      areasRoute,
      reportRoute,
      reviewsRoute,
      foundJointsRoute,
      packsRoute,
      packRoute,
      systemsRoute,
      punchItemsRoute,
      permitsRoute,
      blindsRoute,
      itemsRoute,
      talksRoute,
      registerRoute,
      addJointRoute,
      editJointRoute,
      jointRoute,
      targetRoute,
      setupRoute,
      myJointsRoute,
      workRoute,
      tightenRoute,
      signRoute,
      foundRoute,
      talkRoute,
      packTestRoute,
      handOverRoute,
    ]),
  ]),
]);
