import type { JointPage, MakeAnswer } from '@seatwell/contract';
import { RULES, severityOf } from '@seatwell/workflow';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { shutdownQuery } from '../../app/reads.ts';
import { useMe } from '../../app/session.ts';
import { useCommand } from '../../app/use-command.ts';
import { useRuleWords } from '../../app/use-rule-words.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useTrade } from '../../app/use-trade.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Combobox } from '../../ui/combobox.tsx';
import { DateField } from '../../ui/date-field.tsx';
import { DecisionDialog } from './decision-dialog.tsx';

interface Props {
  readonly page: JointPage;
  readonly make: MakeAnswer | undefined;
  readonly onClose: () => void;
}

/** Lets one stated rule pass for this make, with a reason that is printed. Rules with a floor are not offered. */
export function DeviationDialog({ page, make, onClose }: Props) {
  const text = useText('joint');
  const accept = useCommand('deviation-accepted');
  const trade = useTrade();
  const ruleWords = useRuleWords();
  const { grants } = useMe();
  const shutdown = useQuery(shutdownQuery(useShutdownId()));
  const [rule, setRule] = useState('');
  const [until, setUntil] = useState('');
  if (!make) return null;
  const settings = shutdown.data?.settings ?? { severities: {} };
  const offered = RULES.filter(
    (each) => each.subject === 'make' && severityOf(each, page.joint.criticality, settings) === 'reason',
  );
  const chosen = offered.find((each) => each.code === rule);
  const sentence = (each: (typeof RULES)[number] | undefined) =>
    ruleWords(each?.code ?? '')?.sentence ?? each?.sentence ?? '';
  const mayAccept = chosen?.clearedBy.some((role) => grants.some((grant) => grant.role === role)) ?? false;
  const rolesOf = (roles: readonly string[]) => roles.map((role) => trade.word('role', role)).join(', ');
  return (
    <DecisionDialog
      title={text('deviation-title', { tag: page.joint.tag })}
      description={text('deviation-detail')}
      sendLabel={text('sign')}
      reasonLabel={text('reason')}
      meaning={text('deviation-meaning', { tag: page.joint.tag, rule: sentence(chosen) })}
      roles={['engineer', 'inspector']}
      missing={
        chosen === undefined
          ? text('rule-needed')
          : mayAccept
            ? undefined
            : text('rule-role', { roles: rolesOf(chosen.clearedBy) })
      }
      busy={accept.isPending}
      error={accept.error}
      onClose={onClose}
      onSend={({ reason, signature }) =>
        accept.mutate(
          {
            subjectId: page.joint.jointId,
            makeId: make.makeId,
            versionSeen: page.joint.version,
            signature,
            payload: { rule, reason, until: until === '' ? null : until },
          },
          { onSuccess: onClose },
        )
      }
    >
      <Combobox
        label={text('rule')}
        value={rule}
        onChange={setRule}
        options={offered.map((each) => ({
          value: each.code,
          label: sentence(each),
          detail: text('rule-accepted-by', { roles: rolesOf(each.clearedBy) }),
        }))}
      />
      <DateField label={text('until')} optional value={until} onChange={setUntil} />
    </DecisionDialog>
  );
}
