import type { EventType, SystemPage } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { shutdownRead } from '../../app/reads.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { ListSigning } from '../signing/list-signing.tsx';
import styles from '../signing/signing.module.css';
import { Exceptions } from './exceptions.tsx';
import { OfferStanding } from './offer-standing.tsx';
import { Zero } from './zero.tsx';

export const systemQuery = (shutdownId: string, systemId: string) =>
  shutdownRead<SystemPage>(shutdownId, `/systems/${systemId}`);

/** Whether the action is the caller's at all; what else stands against it is said beside its button. */
const hasRole = (system: SystemPage, type: EventType): boolean => {
  const action = system.actions.find((each) => each.type === type);
  return action?.allowed === true || action?.reason?.code === 'not-zero';
};

/** The hand-over of a system: what must be zero, by name; the coordinator's offer; operations takes it over. */
export function HandOverPage() {
  const text = useText('handover');
  const trade = useTrade();
  const shutdownId = useShutdownId();
  const { systemId } = useParams({ strict: false });
  const { data: system } = useSuspenseQuery(systemQuery(shutdownId, systemId ?? ''));
  const [exceptions, setExceptions] = useState<readonly string[]>([]);
  const rows = system.joints
    .filter((joint) => joint.stage !== 'handed-over')
    .map((joint) => ({ ...joint, detail: trade.word('stage', joint.stage) }));
  const offered = rows.filter((joint) => joint.offered);
  const mayOffer = hasRole(system, 'hand-over-offered');
  const mayTakeOver = hasRole(system, 'handed-over');
  const { zeros } = system;
  const open = zeros.notProven + zeros.temporaryBlindsIn + zeros.temporaryFittings + zeros.unclosedA;
  const meaning = (key: 'offer-meaning' | 'take-over-meaning', listed: readonly string[]) =>
    listed.length === 0
      ? text(key, { code: system.code })
      : text(`${key}-exceptions`, { code: system.code, exceptions: listed.join('; ') });
  const joint = (jointId: string) => addresses.joint(shutdownId, jointId);
  return (
    <div className={styles.page}>
      <PageHeader
        title={text(system.handedOver ? 'title-done' : open === 0 ? 'title-ready' : 'title-not-ready', {
          code: system.code,
          count: open,
        })}
        documentTitle={system.code}
        over={<Link href={addresses.systems(shutdownId)}>{text('to-systems')}</Link>}
        sub={system.name}
        actions={
          <Button
            onClick={() => window.open(addresses.handOverList(shutdownId, system.systemId), '_blank', 'noopener')}
          >
            {text('print-list')}
          </Button>
        }
      />
      <Zero
        title={text('not-proven', { count: zeros.notProven })}
        items={system.notProven.map((each) => ({
          key: each.jointId,
          href: joint(each.jointId),
          label: each.tag,
          detail: `${trade.word('stage', each.stage)} · ${trade.waitsFor(each.waitsFor)}`,
        }))}
      />
      <Zero
        title={text('blinds-in', { count: zeros.temporaryBlindsIn })}
        items={system.temporaryBlindsIn.map((each) => ({
          key: each.blindId,
          href: each.joint ? joint(each.joint.jointId) : undefined,
          label: each.number,
          detail: each.joint?.tag ?? '',
        }))}
      />
      <Zero
        title={text('temporary', { count: zeros.temporaryFittings })}
        items={system.temporaryFittings.map((each) => ({
          key: each.jointId,
          href: joint(each.jointId),
          label: each.tag,
          detail: [each.gasket ? text('gasket') : null, each.bolts ? text('bolts') : null].filter(Boolean).join(', '),
        }))}
      />
      <Zero
        title={text('open-A', { count: zeros.unclosedA })}
        items={system.unclosedA.map((each) => ({
          key: each.punchId,
          href: each.joint ? joint(each.joint.jointId) : undefined,
          label: each.joint?.tag ?? system.code,
          detail: each.text,
        }))}
      />
      <Zero
        soft
        title={text('open-B', { count: zeros.unclosedB })}
        items={system.unclosedB.map((each) => ({
          key: each.punchId,
          href: each.joint ? joint(each.joint.jointId) : undefined,
          label: each.joint?.tag ?? system.code,
          detail: each.text,
        }))}
      />
      {system.offer && <OfferStanding offer={system.offer} />}
      {mayOffer && (
        <>
          <Exceptions
            exceptions={exceptions}
            open={system.unclosedB.map((each) => each.text)}
            onChange={setExceptions}
          />
          {system.offer && <p>{text('offer-again')}</p>}
          <ListSigning
            type="hand-over-offered"
            rows={rows}
            payloadOf={() => ({ systemId: system.systemId, exceptions: [...exceptions] })}
            title={text('offer-title', { code: system.code })}
            meaning={meaning('offer-meaning', exceptions)}
            label={text('offer', { count: rows.length })}
            roles={['coordinator']}
            missing={rows.length === 0 ? text('none-to-offer') : undefined}
          />
        </>
      )}
      {mayTakeOver && (
        <ListSigning
          type="handed-over"
          rows={offered}
          payloadOf={() => ({ systemId: system.systemId, exceptions: [...(system.offer?.exceptions ?? [])] })}
          title={text('take-over-title', { code: system.code })}
          meaning={meaning('take-over-meaning', system.offer?.exceptions ?? [])}
          label={text('take-over', { count: offered.length })}
          roles={['operations']}
          missing={offered.length === 0 ? text('not-offered') : undefined}
        />
      )}
    </div>
  );
}
