import type { JointSpecification } from '@seatwell/contract';
import { DEFAULT_SETTINGS } from '@seatwell/workflow';
import { accepted, type SignedIn, siteCommand } from '../support/plant.ts';
import { specification } from '../support/sample-plant.ts';
import type { JointOptions, Shutdown } from '../support/shutdown.ts';
import { type Point, type Said, type Tale, taleTo } from '../support/tale.ts';
import { holdTalk } from '../support/talk.ts';
import { nippedUp, wait } from '../support/work.ts';
import { hire, keep, otherProcedure, qualify, tool, wrenchOnly } from './hire.ts';
import { asked, type RuleCase, type RuleCases } from './rule-case.ts';

const at =
  (point: Point, options: JointOptions = {}) =>
  (shutdown: Shutdown) =>
    taleTo(shutdown, point, options);

const HOUR = 60;

type NippedUp = ReturnType<typeof nippedUp>;
type Part = 'gasket' | 'bolting' | 'alignment';

/** Nipped up otherwise than it should be in one thing; the remedy is to do it right. */
const nippedWrong = <P extends Part>(part: P, change: Partial<NippedUp[P]>): RuleCase =>
  asked('nipped-up', at('faces accepted'), {
    fires: { says: ({ shutdown }) => ({ change: { [part]: { ...nippedUp(shutdown)[part], ...change } } }) },
  });

const newcomer = keep<string>();
const tools = keep<{ toolId: string; calibrationId: string }>();
const procedures = keep<string>();

export const NIPPED_UP_CASES: RuleCases = {
  'nipped-up.faces-not-lapsed': asked('nipped-up', at('faces accepted'), {
    fires: { first: async ({ shutdown }) => wait(shutdown, DEFAULT_SETTINGS.faceAcceptanceLapses_h * HOUR) },
    satisfied: { first: (tale) => tale.tell('faces-inspected') },
  }),
  'nipped-up.gasket-family': nippedWrong('gasket', { family: 'graphite-sheet' }),
  'nipped-up.gasket-size': nippedWrong('gasket', { rating: '600' }),
  'nipped-up.gasket-purpose': nippedWrong('gasket', { purpose: 'test' }),
  'nipped-up.gasket-count': nippedWrong('gasket', { count: 2 }),
  'nipped-up.gasket-identified': nippedWrong('gasket', { batch: null, markingPhoto: null }),
  'nipped-up.bolting-as-target': nippedWrong('bolting', { grade: 'B8' }),
  'nipped-up.lubricant-as-target': asked('nipped-up', at('faces accepted'), {
    fires: { says: { change: { lubricantId: null, lubricant: 'engine oil' } } },
  }),
  'nipped-up.alignment': nippedWrong('alignment', { offset_mm: 1.8 }),
  'nipped-up.alignment-beyond-band': nippedWrong('alignment', { offset_mm: null }),
  'nipped-up.qualified': asked('nipped-up', at('faces accepted'), {
    fires: { says: async (tale) => ({ performedBy: [newcomer.set(tale, await hire(tale.shutdown))] }) },
    satisfied: {
      first: (tale) => qualify(tale.shutdown, newcomer.of(tale), 'assembly'),
      says: (tale) => ({ performedBy: [newcomer.of(tale)] }),
    },
  }),
};

const passWith = (toolId: string): Said<'pass-recorded'> => ({ change: { tools: wrenchOnly(toolId) } });

/** What the target gives for the first pass, times a factor. */
async function setTo(tale: Tale, factor: number): Promise<Said<'pass-recorded'>> {
  const { target } = await tale.make();
  const torque_Nm = Math.round((target?.passes[0]?.torque_Nm ?? Number.NaN) * factor);
  return { change: { set: { torque_Nm, asEntered: { value: torque_Nm, unit: 'N·m' } } } };
}

/** A joint nipped up under a procedure on which no talk was held. */
async function notBriefed(shutdown: Shutdown): Promise<Tale> {
  const tale = await taleTo(shutdown, 'listed');
  const procedureId = procedures.set(tale, await otherProcedure(shutdown, {}));
  await tale.tell('procedure-assigned', { change: { procedureId } });
  return tale.goOn('nipped up', 'procedure assigned');
}

const theCrew = ({ technician, mate }: Shutdown) => [technician.personId, mate.personId];

export const PASSES_CASES: RuleCases = {
  'passes.target-in-force': asked('pass-recorded', at('nipped up'), {
    fires: {
      first: (tale) =>
        tale.tell('revoked', {
          by: tale.shutdown.engineer,
          change: { eventId: tale.eventId('target-approved'), reason: 'Wrong gasket data' },
        }),
    },
    satisfied: { first: (tale) => tale.tell('target-approved') },
  }),
  'passes.talk': asked('pass-recorded', notBriefed, {
    satisfied: { first: (tale) => holdTalk(tale.shutdown, procedures.of(tale), theCrew(tale.shutdown)) },
  }),
  'passes.qualified': asked('pass-recorded', at('nipped up'), {
    fires: {
      says: async (tale) => {
        const personId = newcomer.set(tale, await hire(tale.shutdown));
        await holdTalk(tale.shutdown, tale.shutdown.procedureId, [personId]);
        return { performedBy: [personId] };
      },
    },
    satisfied: {
      first: (tale) => qualify(tale.shutdown, newcomer.of(tale), 'torque-wrench'),
      says: (tale) => ({ performedBy: [newcomer.of(tale)] }),
    },
  }),
  'passes.every-bolt': asked('pass-recorded', at('nipped up'), { fires: { says: { change: { boltsDone: 5 } } } }),
  'passes.gap-check-overnight': asked('pass-recorded', at('first pass'), {
    fires: { first: async ({ shutdown }) => wait(shutdown, 24 * HOUR) },
    satisfied: { says: { change: { gapsChecked_mm: [3, 3.1, 3, 3.1] } } },
  }),
  'passes.set-as-target': asked('pass-recorded', at('nipped up'), { fires: { says: (tale) => setTo(tale, 1.25) } }),
  'passes.time-plausible': asked('pass-recorded', at('nipped up'), {
    fires: {
      says: ({ shutdown }) => ({
        change: { startedAt: new Date(shutdown.plant.now.getTime() - 20_000).toISOString() },
      }),
    },
  }),
  'passes.one-place-at-a-time': asked('pass-recorded', at('nipped up'), {
    fires: {
      first: async (tale) => {
        const other = await taleTo(tale.shutdown, 'nipped up');
        // Said without letting the clock run on: both passes took the same twelve minutes.
        accepted(await other.say('pass-recorded'));
      },
    },
  }),
  'passes.tool-calibrated': asked('pass-recorded', at('nipped up'), {
    fires: {
      says: async (tale) => {
        const expired = { validThrough: '2027-01-31' };
        return passWith(tools.set(tale, await tool(tale.shutdown, 'torque-wrench', [450, 'N·m'], expired)).toolId);
      },
    },
    satisfied: {
      first: async (tale) => {
        const { toolId, calibrationId } = tools.of(tale);
        await recalibrate(tale.shutdown, tale.shutdown.inspector, toolId, calibrationId);
      },
      says: (tale) => passWith(tools.of(tale).toolId),
    },
  }),
  'passes.tool-set-complete': asked('pass-recorded', at('nipped up'), {
    fires: {
      says: async (tale) =>
        passWith(tools.set(tale, await tool(tale.shutdown, 'hydraulic-wrench', [2000, 'N·m'])).toolId),
    },
    satisfied: {
      says: async (tale) => {
        const pump = await tool(tale.shutdown, 'pump', [70, 'MPa']);
        const gauge = await tool(tale.shutdown, 'pressure-gauge', [70, 'MPa']);
        return { change: { tools: { toolId: tools.of(tale).toolId, pumpId: pump.toolId, gaugeId: gauge.toolId } } };
      },
    },
  }),
  'passes.tool-in-range': asked('pass-recorded', at('nipped up'), {
    fires: { says: async ({ shutdown }) => passWith((await tool(shutdown, 'torque-wrench', [2000, 'N·m'])).toolId) },
  }),
};

/** A new certificate for a tool, valid until after the shutdown. */
async function recalibrate({ plant }: Shutdown, inspector: SignedIn, toolId: string, after: string): Promise<void> {
  const calibrationId = after.replace(/^.{8}/, 'abcdef01');
  accepted(
    await siteCommand(plant, inspector, 'calibration-recorded', toolId, {
      calibrationId,
      toolId,
      calibratedOn: '2027-02-01',
      validThrough: '2028-02-01',
      certificate: null,
      certificateNumber: 'C-2',
      provisional: false,
      pairs: [],
    }),
  );
}

const fibre: JointSpecification = specification({
  hotExposed: true,
  gasket: { ...specification().gasket, family: 'fibre-sheet', contactInside_mm: 230, contactOutside_mm: 270 },
});

/** A hot joint with a fibre sheet gasket and the maker's torque, tight, five hours later. */
async function hotFibre(shutdown: Shutdown): Promise<Tale> {
  const tale = await taleTo(shutdown, 'procedure assigned', { specification: fibre });
  await tale.tell('target-approved', {
    payload: {
      basis: 'makers-torque',
      torque_Nm: 320,
      torqueAsEntered: { value: 320, unit: 'N·m' },
      lubricant: 'test paste',
      source: 'maker’s sheet 12',
    },
  });
  await tale.goOn('tight', 'engineered');
  wait(shutdown, 5 * HOUR);
  return tale;
}

export const TIGHT_CASES: RuleCases = {
  'tight.no-nut-movement': asked('final-round-recorded', at('every pass'), {
    fires: { says: { change: { nutMoved: true } } },
  }),
  // Nothing makes a hot joint cold again; what can be wrong is what the register says of it.
  'tight.no-relaxation-pass-on-hot-elastomer': asked('relaxation-pass-recorded', hotFibre, {
    satisfied: {
      first: (tale) => tale.tell('joint-specified', { change: { specification: { ...fibre, hotExposed: false } } }),
    },
  }),
  'tight.relaxation-waited': asked('relaxation-pass-recorded', at('tight'), {
    satisfied: { first: async ({ shutdown }) => wait(shutdown, DEFAULT_SETTINGS.relaxationPassAfter_h * HOUR) },
  }),
};
