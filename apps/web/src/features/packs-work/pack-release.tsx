import type { PackPage } from '@seatwell/contract';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { shutdownQuery, toolsQuery } from '../../app/reads.ts';
import { useSigner } from '../../app/sign.ts';
import { useCommand } from '../../app/use-command.ts';
import { useReasonAgainst } from '../../app/use-reason-against.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { Checkbox } from '../../ui/checkbox.tsx';
import { Notice } from '../../ui/notice.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SignDialog } from '../../ui/sign-dialog.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from '../signing/signing.module.css';
import { FactProblem } from '../work/fact-problem.tsx';
import { useReading } from '../work/numbers.ts';
import { useRulesProblem } from '../work/rules-problem.ts';
import { GaugeField } from './gauge-field.tsx';

/** The checklist before pressure goes on; every point is ticked by whoever signs. */
export function PackRelease({ pack }: { pack: PackPage }) {
  const reasonAgainst = useReasonAgainst();
  const text = useText('testing');
  const shutdownId = useShutdownId();
  const temperature = useReading('temperature');
  const { data: tools } = useSuspenseQuery(toolsQuery);
  const { data: shutdown } = useSuspenseQuery(shutdownQuery(shutdownId));
  const signer = useSigner('inspector');
  const problem = useRulesProblem();
  const command = useCommand('pack-released');
  const [ticks, setTicks] = useState({ boundaryWalked: false, blindsRated: false, reliefValvesOut: false });
  const [metal_C, setMetal] = useState<number | null>(null);
  const [gaugeIds, setGauges] = useState<readonly string[]>([]);
  const [remark, setRemark] = useState('');
  const [signing, setSigning] = useState(false);
  const unclosed = pack.punchItems.filter((item) => item.category === 'A' && item.closedAt === null);
  const least = shutdown.settings.leastMetalTemperature_C;

  let missing = reasonAgainst(pack.actions, 'pack-released');
  if (missing === undefined && !Object.values(ticks).every(Boolean)) missing = text('missing-ticks');
  else if (missing === undefined && metal_C === null) missing = text('missing-metal');
  else if (missing === undefined && gaugeIds.length === 0) missing = text('missing-gauges');

  const meaning = text('release-meaning', { number: pack.number });
  const sign = (secret: string) =>
    metal_C !== null &&
    command.mutate(
      {
        subjectId: pack.packId,
        versionSeen: pack.version,
        signature: { secret, meaning },
        payload: { ...ticks, metalTemperature_C: metal_C, gaugeIds: [...gaugeIds], remark: remark.trim() || null },
      },
      { onSuccess: () => setSigning(false) },
    );
  return (
    <div className={styles.group}>
      <h2>{text('before-pressure')}</h2>
      {unclosed.length > 0 && (
        <Notice kind="attention" title={text('open-A', { count: unclosed.length })}>
          <ul>
            {unclosed.map((item) => (
              <li key={item.punchId}>{[item.joint?.tag, item.text].filter(Boolean).join(': ')}</li>
            ))}
          </ul>
        </Notice>
      )}
      {(['boundaryWalked', 'blindsRated', 'reliefValvesOut'] as const).map((point) => (
        <Checkbox
          key={point}
          label={text(point)}
          detail={text(`${point}-detail`)}
          checked={ticks[point]}
          onChange={(on) => setTicks({ ...ticks, [point]: on })}
        />
      ))}
      <NumberField
        label={text('metal-temperature')}
        unit={temperature.unit}
        hint={text('metal-least', { limit: temperature.limit(least) })}
        least={temperature.shown(least)}
        value={temperature.shown(metal_C)}
        onChange={(shown) => setMetal(temperature.held(shown))}
      />
      <GaugeField tools={tools.rows} pressure_MPa={pack.pressure_MPa} chosen={gaugeIds} onChange={setGauges} />
      <TextField label={text('remark')} optional lines={2} value={remark} onChange={setRemark} />
      {!signing && <FactProblem error={command.error} />}
      <StickyActionBar
        actions={
          <Button
            kind="primary"
            size="large"
            wide
            disabledReason={missing}
            onClick={() => {
              command.reset();
              setSigning(true);
            }}
          >
            {text('release-pack')}
          </Button>
        }
      />
      <SignDialog
        open={signing}
        onOpenChange={setSigning}
        title={text('release-pack')}
        meaning={meaning}
        signer={signer}
        items={[{ id: pack.packId, label: pack.number, detail: text('joints', { count: pack.total }) }]}
        signLabel={text('sign')}
        busy={command.isPending}
        problem={problem(command.error)}
        onSign={({ secret }) => sign(secret)}
      />
    </div>
  );
}
