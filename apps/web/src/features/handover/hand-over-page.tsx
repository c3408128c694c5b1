import type { SystemPage } from '@seatwell/contract';
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
import { TextField } from '../../ui/text-field.tsx';
import { ListSigning } from '../signing/list-signing.tsx';
import styles from '../signing/signing.module.css';
import { Zero } from './zero.tsx';

export const systemQuery = (shutdownId: string, systemId: string) =>
  shutdownRead<SystemPage>(shutdownId, `/systems/${systemId}`);

/** The hand-over of a system: what must be zero, by name; the exceptions; one signature over its joints. */
export function HandOverPage() {
  const text = useText('handover');
  const trade = useTrade();
  const shutdownId = useShutdownId();
  const { systemId } = useParams({ strict: false });
  const { data: system } = useSuspenseQuery(systemQuery(shutdownId, systemId ?? ''));
  const [exceptions, setExceptions] = useState<readonly string[]>([]);
  const [typed, setTyped] = useState('');
  const rows = system.joints.map((joint) => ({ ...joint, detail: trade.word('stage', joint.stage) }));
  const { zeros } = system;
  const open = zeros.notProven + zeros.temporaryBlindsIn + zeros.temporaryFittings + zeros.unclosedA;
  const add = () => {
    setExceptions([...exceptions, typed.trim()]);
    setTyped('');
  };
  const joint = (jointId: string) => addresses.joint(shutdownId, jointId);
  return (
    <div className={styles.page}>
      <PageHeader
        title={text(open === 0 ? 'title-ready' : 'title-not-ready', { code: system.code, count: open })}
        documentTitle={system.code}
        over={<Link href={addresses.areas(shutdownId)}>{text('to-areas')}</Link>}
        sub={system.name}
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
      <section className={styles.group} aria-label={text('exceptions')}>
        <h2>{text('exceptions')}</h2>
        <p>{text('exceptions-how')}</p>
        <ul>
          {exceptions.map((each) => (
            <li key={each}>
              {each}{' '}
              <Button kind="quiet" onClick={() => setExceptions(exceptions.filter((other) => other !== each))}>
                {text('take-out')}
              </Button>
            </li>
          ))}
        </ul>
        <TextField label={text('exception')} lines={2} value={typed} onChange={setTyped} />
        <Button
          disabledReason={
            typed.trim() === ''
              ? text('missing-exception')
              : exceptions.includes(typed.trim())
                ? text('listed')
                : undefined
          }
          onClick={add}
        >
          {text('add-exception')}
        </Button>
      </section>
      <ListSigning
        type="handed-over"
        rows={rows}
        payloadOf={() => ({ systemId: system.systemId, exceptions: [...exceptions] })}
        title={text('sign-title', { code: system.code })}
        meaning={
          exceptions.length === 0
            ? text('meaning', { code: system.code })
            : text('meaning-exceptions', { code: system.code, exceptions: exceptions.join('; ') })
        }
        label={text('hand-over', { count: rows.length })}
        roles={['coordinator', 'operations']}
        missing={rows.length === 0 ? text('no-joints') : undefined}
      />
    </div>
  );
}
