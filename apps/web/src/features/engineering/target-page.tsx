import { keepPreviousData, useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { useParams, useSearch } from '@tanstack/react-router';
import { useDeferredValue, useState } from 'react';
import { addresses } from '../../app/addresses.ts';
import { ErrorNotice, useProblemDetails } from '../../app/error-notice.tsx';
import { jointQuery } from '../../app/reads.ts';
import { textOf } from '../../app/search-params.ts';
import { useSigner } from '../../app/sign.ts';
import { useCommand } from '../../app/use-command.ts';
import { useGo } from '../../app/use-go.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Link } from '../../ui/link.tsx';
import { PageHeader } from '../../ui/page-header.tsx';
import { SignDialog } from '../../ui/sign-dialog.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { jointState, shownMake } from '../joint/shown-make.ts';
import styles from './engineering.module.css';
import { PreviewPanel, useSetTo } from './preview-panel.tsx';
import { emptyTarget, targetPayload } from './target-draft.ts';
import { TargetFields } from './target-fields.tsx';
import { targetPreviewQuery } from './target-preview.ts';

/** The target of one joint: what it is calculated from, what comes out, and the engineer's signature. */
export function TargetPage() {
  const reasonAgainst = useReasonAgainst();
  const text = useText('engineering');
  const trade = useTrade();
  const shutdownId = useShutdownId();
  const go = useGo();
  const { jointId = '' } = useParams({ strict: false });
  const search = useSearch({ strict: false }) as Record<string, unknown>;
  const { data: page } = useSuspenseQuery(jointQuery(shutdownId, jointId));
  const make = shownMake(page, textOf(search.make));
  const [draft, setDraft] = useState(emptyTarget);
  const [signing, setSigning] = useState(false);
  const approve = useCommand('target-approved');
  const signer = useSigner('engineer');
  const problem = useProblemDetails()(approve.error);
  const read = targetPayload(useDeferredValue(draft), make?.procedure?.content);
  const payload = 'payload' in read ? read.payload : undefined;
  const makeId = make?.makeId ?? '';
  const preview = useQuery({
    ...targetPreviewQuery(shutdownId, jointId, makeId, payload),
    enabled: payload !== undefined && make !== undefined,
    placeholderData: keepPreviousData,
  });
  const back = addresses.joint(shutdownId, jointId, make ? { make: makeId } : {});
  const { standard, size, rating } = jointState(page).specification.flange;
  const stress_MPa = preview.data?.target.boltStress_MPa;
  const simulation = addresses.simulate({
    standard,
    size,
    rating,
    ...(make ? { family: make.gasket.family } : {}),
    ...(stress_MPa ? { stress_MPa: String(Math.round(stress_MPa)) } : {}),
  });
  const reason =
    (make ? reasonAgainst(make.actions, 'target-approved') : text('no-make')) ??
    ('missing' in read ? text(read.missing) : undefined) ??
    (preview.isError ? text('preview-refused') : undefined);
  const setTo = useSetTo()(preview.data);
  const meaning = text('target-meaning', {
    tag: page.joint.tag,
    torque: setTo,
  });
  return (
    <>
      <PageHeader
        title={text('target-title', { tag: page.joint.tag })}
        over={<Link href={back}>{page.joint.tag}</Link>}
        sub={
          make?.procedure
            ? text('by-procedure', {
                code: make.procedure.code,
                revision: make.procedure.revision,
                method: trade.word('method', make.procedure.content.method),
              })
            : text('without-procedure')
        }
      />
      <div className={styles.two}>
        <div className={styles.form}>
          <TargetFields
            value={draft}
            onChange={setDraft}
            family={make?.gasket.family}
            method={make?.procedure?.content.method}
          />
          <Link href={simulation}>{text('simulate-flange')}</Link>
        </div>
        <div className={styles.form} aria-live="polite">
          {'missing' in read && <p className={styles.soft}>{text('preview-waits')}</p>}
          {payload && <ErrorNotice error={preview.error} />}
          {payload && preview.data && !preview.isError && <PreviewPanel preview={preview.data} />}
        </div>
      </div>
      <StickyActionBar
        actions={
          <>
            <Button onClick={() => go(back)}>{text('cancel')}</Button>
            <Button
              kind="primary"
              busy={preview.isFetching && payload !== undefined}
              disabledReason={reason}
              onClick={() => setSigning(true)}
            >
              {text('approve')}
            </Button>
          </>
        }
      />
      <SignDialog
        open={signing}
        onOpenChange={setSigning}
        title={text('approve')}
        meaning={meaning}
        signer={signer}
        items={[{ id: jointId, label: page.joint.tag }]}
        signLabel={text('sign')}
        busy={approve.isPending}
        problem={problem}
        onSign={({ secret }) =>
          payload &&
          approve.mutate(
            { subjectId: jointId, makeId, versionSeen: page.joint.version, signature: { secret, meaning }, payload },
            { onSuccess: () => go(back, { replace: true }) },
          )
        }
      />
    </>
  );
}
