import type { ChoicesAnswer, EventType, JointPage, MakeAnswer } from '@seatwell/contract';
import { lazy, Suspense, useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useRuleSaid } from '../../app/use-rule-words.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/dialog.tsx';
import { AssignDialog } from '../register/assign-dialog.tsx';
import { ProcedureDialog } from '../register/procedure-dialog.tsx';
import { ReleaseDialog } from '../register/release-dialog.tsx';
import { DeviationDialog } from './deviation-dialog.tsx';
import styles from './joint.module.css';
import { CancelMakeDialog, HoldDialog, PunchDialog, ReleaseHoldDialog, VoidDialog } from './joint-decisions.tsx';
import { isWorkable, jointState, stateOf } from './shown-make.ts';
import { TakeBackDialog } from './take-back-dialog.tsx';
import { WaiveDialog, WitnessDialog } from './witness-dialogs.tsx';

const MergeDialog = lazy(() => import('../reviews/merge-dialog.tsx').then((m) => ({ default: m.MergeDialog })));
const PlanMakeDialog = lazy(() => import('./plan-make-dialog.tsx').then((m) => ({ default: m.PlanMakeDialog })));

type Asked =
  | 'make-assigned'
  | 'procedure-assigned'
  | 'break-released'
  | 'make-planned'
  | 'make-cancelled'
  | 'hold-placed'
  | 'hold-released'
  | 'punch-raised'
  | 'joint-merged'
  | 'joint-voided'
  | 'deviation-accepted'
  | 'witnessed'
  | 'witness-waived'
  | 'taken-back';

interface Props {
  readonly page: JointPage;
  readonly make: MakeAnswer | undefined;
  readonly choices: ChoicesAnswer;
}

// What moves the make on, by what it waits for.
const nextOf: Readonly<Record<string, EventType>> = {
  procedure: 'procedure-assigned',
  target: 'target-approved',
  release: 'break-released',
  opening: 'opened',
  faces: 'faces-inspected',
  'faces-again': 'faces-inspected',
  'nip-up': 'nipped-up',
  pass: 'pass-recorded',
  'final-round': 'final-round-recorded',
  'relaxation-pass': 'relaxation-pass-recorded',
  check: 'checked',
  witness: 'witnessed',
  hold: 'hold-released',
  repair: 'loosened',
};
const tightening: readonly string[] = ['pass-recorded', 'final-round-recorded', 'relaxation-pass-recorded'];

/** What can be done with the joint now: the next step first, the rest behind it, each with its reason where not. */
export function JointActions({ page, make, choices }: Props) {
  const reasonAgainst = useReasonAgainst(useRuleSaid());
  const text = useText('joint');
  const shutdownId = useShutdownId();
  const go = useGo();
  const [asked, setAsked] = useState<Asked | null>(null);
  const [more, setMore] = useState(false);
  const { jointId } = page.joint;
  const actions = [...(make?.actions ?? []), ...page.actions];
  const makeQuery = make ? { make: make.makeId } : {};
  // Another make than the one to work on is asked for by name.
  const sheetQuery = make && make.makeId !== page.shownMakeId ? { makeId: make.makeId } : {};
  const start = (type: EventType) => {
    setMore(false);
    if (type === 'target-approved') go(addresses.target(shutdownId, jointId, makeQuery));
    else if (type === 'joint-specified') go(addresses.editJoint(shutdownId, jointId));
    else if (tightening.includes(type)) go(addresses.tighten(shutdownId, jointId, makeQuery));
    else if (here.has(type)) setAsked(type as Asked);
    else go(addresses.work(shutdownId, jointId, makeQuery));
  };
  const nextType = make && nextOf[make.waitsFor.code];
  const { found } = jointState(page);
  const workable = isWorkable(page, make);
  const next = workable && nextType && actions.some((action) => action.type === nextType) ? nextType : undefined;
  const rest = offered
    .filter((type) => type !== next && actions.some((action) => action.type === type))
    .filter((type) => type !== 'joint-merged' || found)
    .filter((type) => workable || reasonAgainst(actions, type) === undefined)
    .filter((type) => workable || !ofWork.has(type))
    .filter((type) => !ofTheFew.has(type) || reasonAgainst(actions, type) === undefined);
  const button = (type: EventType, kind: 'primary' | 'plain' = 'plain') => (
    <Button
      key={type}
      kind={kind}
      wide={more}
      disabledReason={reasonAgainst(actions, type)}
      onClick={() => start(type)}
    >
      {text(`do-${type as 'opened'}`)}
    </Button>
  );
  return (
    <>
      <div className={styles.actions}>
        {next && button(next, 'primary')}
        {make && workable && (
          <Button onClick={() => go(addresses.work(shutdownId, jointId, makeQuery))}>{text('work-on-it')}</Button>
        )}
        {make && (
          <Button onClick={() => window.open(addresses.sheet(shutdownId, jointId, sheetQuery), '_blank', 'noopener')}>
            {text('print-sheet')}
          </Button>
        )}
        {(rest.length > 0 || make) && <Button onClick={() => setMore(true)}>{text('more-actions')}</Button>}
      </div>
      <Sheet open={more} onOpenChange={setMore} title={text('what-to-do', { tag: page.joint.tag })}>
        <div className={styles.form}>
          {rest.map((type) => button(type))}
          {make && <PaperButtons shutdownId={shutdownId} jointId={jointId} query={sheetQuery} />}
        </div>
      </Sheet>
      <Asked asked={asked} page={page} make={make} choices={choices} onClose={() => setAsked(null)} />
    </>
  );
}

function PaperButtons(props: { shutdownId: string; jointId: string; query: Record<string, string> }) {
  const { shutdownId, jointId, query } = props;
  const text = useText('joint');
  const open = (address: string) => window.open(address, '_blank', 'noopener');
  return (
    <>
      <Button wide onClick={() => open(addresses.tag(shutdownId, jointId, query))}>
        {text('print-tag')}
      </Button>
      <Button wide onClick={() => open(addresses.recordForm(shutdownId, jointId, query))}>
        {text('print-form')}
      </Button>
    </>
  );
}

const here: ReadonlySet<string> = new Set<Asked>([
  'make-assigned',
  'procedure-assigned',
  'break-released',
  'make-planned',
  'make-cancelled',
  'hold-placed',
  'hold-released',
  'punch-raised',
  'joint-merged',
  'joint-voided',
  'deviation-accepted',
  'witnessed',
  'witness-waived',
  'taken-back',
]);

const ofWork: ReadonlySet<string> = new Set([
  'procedure-assigned',
  'target-approved',
  'make-assigned',
  'break-released',
  'deviation-accepted',
  'witnessed',
  'witness-waived',
  'taken-back',
]);

// Of one role and one moment: everybody else is not told each time why it is not theirs.
const ofTheFew: ReadonlySet<string> = new Set(['witnessed', 'witness-waived', 'taken-back']);

const offered = [
  'procedure-assigned',
  'target-approved',
  'make-assigned',
  'break-released',
  'deviation-accepted',
  'witnessed',
  'witness-waived',
  'taken-back',
  'punch-raised',
  'hold-placed',
  'hold-released',
  'joint-specified',
  'joint-merged',
  'make-planned',
  'make-cancelled',
  'joint-voided',
] as const satisfies readonly EventType[];

function Asked({ asked, page, make, choices, onClose }: Props & { asked: Asked | null; onClose: () => void }) {
  const joints = make
    ? [
        {
          jointId: page.joint.jointId,
          makeId: make.makeId,
          version: page.joint.version,
          tag: page.joint.tag,
          planned: {
            crewId: make.crew?.crewId ?? null,
            plannedOn: stateOf(page, make)?.plannedOn ?? null,
          },
        },
      ]
    : [];
  const props = { page, make, onClose };
  switch (asked) {
    case null:
      return null;
    case 'make-assigned':
      return <AssignDialog joints={joints} choices={choices} onClose={onClose} />;
    case 'procedure-assigned':
      return <ProcedureDialog joints={joints} onClose={onClose} />;
    case 'break-released':
      return <ReleaseDialog joints={joints} onClose={onClose} />;
    case 'make-planned':
      return (
        <Suspense fallback={null}>
          <PlanMakeDialog page={page} choices={choices} onClose={onClose} />
        </Suspense>
      );
    case 'make-cancelled':
      return <CancelMakeDialog {...props} />;
    case 'hold-placed':
      return <HoldDialog {...props} />;
    case 'hold-released':
      return <ReleaseHoldDialog {...props} />;
    case 'punch-raised':
      return <PunchDialog {...props} />;
    case 'joint-merged':
      return (
        <Suspense fallback={null}>
          <MergeDialog joint={page.joint} onClose={onClose} />
        </Suspense>
      );
    case 'joint-voided':
      return <VoidDialog {...props} />;
    case 'deviation-accepted':
      return <DeviationDialog {...props} />;
    case 'witnessed':
      return <WitnessDialog {...props} />;
    case 'witness-waived':
      return <WaiveDialog {...props} />;
    case 'taken-back':
      return <TakeBackDialog {...props} />;
  }
}
