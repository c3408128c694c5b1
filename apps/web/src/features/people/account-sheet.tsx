import type { AccountsAnswer } from '@seatwell/contract';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { request } from '../../app/api-client.ts';
import { ErrorNotice } from '../../app/error-notice.tsx';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/dialog.tsx';
import { Notice } from '../../ui/notice.tsx';
import type { AccountRow } from './accounts-page.tsx';
import { DeputyDialog } from './deputy-dialog.tsx';
import { GrantDialog } from './grant-dialog.tsx';
import styles from './people.module.css';
import { ReasonDialog } from './reason-dialog.tsx';

interface Props {
  readonly account: AccountRow;
  readonly accounts: readonly AccountRow[];
  readonly actions: AccountsAnswer['actions'];
  readonly onClose: () => void;
}

type Asking = 'grant' | 'deputy' | 'close' | { readonly end: string; readonly role: string };

/** One account: first password, roles, deputy, end. */
export function AccountSheet({ account, accounts, actions, onClose }: Props) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('people');
  const trade = useTrade();
  const [asking, setAsking] = useState<Asking | null>(null);
  const stop = () => setAsking(null);
  const name = account.person.name ?? account.email;
  const open = account.closedAt === null;
  const inForce = account.grants.filter((grant) => grant.endedAt === null);
  if (asking === 'grant') return <GrantDialog account={account} onClose={stop} />;
  if (asking === 'deputy') return <DeputyDialog account={account} accounts={accounts} onClose={stop} />;
  if (asking === 'close')
    return (
      <ReasonDialog
        type="account-closed"
        subjectId={account.accountId}
        title={text('close-account-of', { name })}
        detail={text('close-account-detail')}
        sendLabel={text('close-account')}
        onClose={stop}
      />
    );
  if (asking !== null)
    return (
      <ReasonDialog
        type="role-ended"
        subjectId={asking.end}
        title={text('end-role-of', { role: asking.role, name })}
        detail={text('end-role-detail')}
        sendLabel={text('end-role')}
        onClose={stop}
      />
    );
  return (
    <Sheet open onOpenChange={(stays) => stays || onClose()} title={name} description={account.email}>
      <div className={styles.sheet}>
        {open && <FirstPassword accountId={account.accountId} />}
        <section className={styles.block}>
          <h3>{text('roles')}</h3>
          <ul className={styles.plain}>
            {inForce.map((grant) => {
              const role = trade.word('role', grant.role);
              return (
                <li key={grant.grantId} className={styles.line}>
                  {role}
                  <Button
                    kind="quiet"
                    label={text('end-role-of', { role, name })}
                    disabledReason={reasonAgainst(actions, 'role-ended')}
                    onClick={() => setAsking({ end: grant.grantId, role })}
                  >
                    {text('end-role')}
                  </Button>
                </li>
              );
            })}
            {inForce.length === 0 && <li>{text('no-roles')}</li>}
          </ul>
          {open && (
            <span className={styles.buttons}>
              <Button disabledReason={reasonAgainst(actions, 'role-granted')} onClick={() => setAsking('grant')}>
                {text('grant-role')}
              </Button>
              <Button
                disabledReason={inForce.length === 0 ? text('no-roles') : reasonAgainst(actions, 'deputy-named')}
                onClick={() => setAsking('deputy')}
              >
                {text('name-deputy')}
              </Button>
            </span>
          )}
        </section>
        {open && (
          <Button disabledReason={reasonAgainst(actions, 'account-closed')} onClick={() => setAsking('close')}>
            {text('close-account')}
          </Button>
        )}
      </div>
    </Sheet>
  );
}

function FirstPassword({ accountId }: { accountId: string }) {
  const text = useText('people');
  const make = useMutation({
    mutationFn: () => request<{ password: string }>(`/accounts/${accountId}/first-password`, { method: 'POST' }),
  });
  return (
    <section className={styles.block}>
      <h3>{text('password')}</h3>
      {make.data ? (
        <Notice kind="attention" title={text('password-once')} live>
          <p className={styles.password}>{make.data.password}</p>
          <p>{text('password-hand-out')}</p>
        </Notice>
      ) : (
        <>
          <p>{text('password-detail')}</p>
          <Button busy={make.isPending} onClick={() => make.mutate()}>
            {text('password-make')}
          </Button>
        </>
      )}
      <ErrorNotice error={make.error} />
    </section>
  );
}
