import type { ToolRow } from '@seatwell/contract';
import { useState } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { StickyActionBar } from '../../ui/sticky-action-bar.tsx';
import { GapFields } from '../work/gap-fields.tsx';
import type { Job } from '../work/job.ts';
import { useReading } from '../work/numbers.ts';
import { PeopleField } from '../work/people-field.tsx';
import type { Position, RunningPass, TighteningDraft } from './draft.ts';
import { RestartNotice } from './restart-notice.tsx';
import { SetValue, SetValues } from './set-value.tsx';
import { StretchTo, useReadStretch } from './stretch-to.tsx';
import { TalkNotice } from './talk-notice.tsx';
import { TensionerCautions } from './tensioner-cautions.tsx';
import styles from './tightening.module.css';
import { ToolField } from './tool-field.tsx';
import { KIND_OF_METHOD } from './tool-fit.ts';
import { useSettings } from './use-setting.ts';
import { wantedOf } from './wanted.ts';

export interface SetupPanelProps {
  readonly job: Job;
  readonly position: Position;
  readonly draft: TighteningDraft;
  readonly tools: readonly ToolRow[];
  readonly onBegin: (running: RunningPass) => void;
}

/** Before a pass: who works, with what, and what is set. */
export function SetupPanel({ job, position, draft, tools, onBegin }: SetupPanelProps) {
  const text = useText('tightening');
  const format = useFormat();
  const gap = useReading('gap');
  const { procedure, restartFrom } = job.make;
  const known =
    draft.lastPerformedBy.length > 0 ? draft.lastPerformedBy : job.people.slice(0, 1).map((p) => p.personId);
  const [by, setBy] = useState<readonly string[]>(known);
  const [chosen, setChosen] = useState({
    toolId: draft.lastTools?.toolId ?? '',
    pumpId: draft.lastTools?.pumpId ?? '',
    gaugeId: draft.lastTools?.gaugeId ?? '',
    // undefined = not typed over: what the target gives
    elongation_mm: undefined as number | null | undefined,
  });
  const [gaps, setGaps] = useState<readonly (number | null)[]>([null, null, null, null]);
  const method = procedure?.content.method ?? 'torque-wrench';
  const tensioning = job.state.target?.tensioning;
  const values = wantedOf(job.state, position);
  const readStretch = useReadStretch();
  const given_mm = values.at(-1)?.elongation_mm;
  const stretch = given_mm === undefined ? undefined : readStretch(given_mm);
  const elongation_mm = chosen.elongation_mm === undefined ? (stretch ?? null) : chosen.elongation_mm;
  const settings = useSettings(procedure, values, tools, { ...chosen, elongation_mm }, tensioning?.hydraulicArea_mm2);
  // The tool must hold every value; the highest is what is recorded of a pass with several.
  const wanted = values.at(-1) ?? null;
  const setting = settings.find(({ set }) => set === null) ?? settings.at(-1) ?? settings[0];
  const sets = settings.flatMap(({ set }) => (set === null ? [] : [set]));
  const gapCheck = position.kind === 'pass' && (restartFrom?.leftOvernight ?? false) && draft.waiting.length === 0;
  const torque = method === 'elongation' ? null : (wanted?.torque_Nm ?? null);
  const toolValue = method === 'tensioner' ? (wanted?.pressure_MPa ?? null) : torque;
  const measured = gaps.filter((each) => each !== null);

  let missing: string | undefined;
  if (by.length === 0) missing = text('missing-people');
  else if (!setting || setting.set === null) missing = setting?.missing ?? text('missing-target');
  else if (gapCheck && measured.length < 4) missing = text('missing-gaps');

  const begin = () =>
    setting &&
    setting.set !== null &&
    onBegin({
      kind: position.kind,
      pass: position.pass,
      stepsDone: 0,
      rounds: 1,
      startedAt: new Date().toISOString(),
      performedBy: by,
      tools: { toolId: chosen.toolId, pumpId: chosen.pumpId || null, gaugeId: chosen.gaugeId || null },
      set: setting.set,
      ...(sets.length > 1 ? { sets } : {}),
      gaps_mm: gapCheck ? measured : null,
    });
  const choose = (more: Partial<typeof chosen>) => setChosen((current) => ({ ...current, ...more }));
  const hydraulic = method === 'hydraulic-wrench' || method === 'tensioner';
  return (
    <div className={styles.view}>
      <div className={`${styles.setup} ${styles.inner}`}>
        <RestartNotice job={job} position={position} waiting={draft.waiting} />
        {/* What changes from pass to pass stands first: the tool is set anew. */}
        {sets.length > 1 && setting?.set && (
          <SetValues sets={sets} byGroups={tensioning !== undefined && tensioning !== null} />
        )}
        {method === 'elongation' && stretch !== undefined && <StretchTo elongation_mm={stretch} />}
        {sets.length <= 1 && method !== 'elongation' && setting && setting.set !== null && (
          <section aria-label={text('set-now')}>
            <h2>{text('set-now')}</h2>
            <SetValue set={setting.set} />
            {setting.resulting_Nm !== null && (
              <p>
                {text('resulting-torque', {
                  resulting: format.quantity('torque', setting.resulting_Nm),
                  wanted: format.quantity('torque', wanted?.torque_Nm),
                })}
              </p>
            )}
            {job.state.target && (
              <p className={styles.soft}>{text('with-lubricant', { lubricant: job.state.target.lubricant })}</p>
            )}
          </section>
        )}
        {tensioning && <TensionerCautions protrusion_mm={tensioning.protrusion_mm} />}
        <TalkNotice job={job} persons={by} />
        <PeopleField label={text('who-tightens')} people={job.people} chosen={by} onChange={setBy} />
        <ToolField
          label={text(`tool-${KIND_OF_METHOD[method]}`)}
          kind={KIND_OF_METHOD[method]}
          tools={tools}
          value={toolValue}
          unit={method === 'tensioner' ? 'MPa' : 'N·m'}
          area_mm2={tensioning?.hydraulicArea_mm2}
          chosen={chosen.toolId}
          onChange={(toolId) => choose({ toolId })}
        />
        {hydraulic && (
          <>
            <ToolField
              label={text('tool-pump')}
              kind="pump"
              tools={tools}
              value={null}
              unit="MPa"
              chosen={chosen.pumpId}
              onChange={(pumpId) => choose({ pumpId })}
            />
            <ToolField
              label={text('tool-pressure-gauge')}
              kind="pressure-gauge"
              tools={tools}
              value={method === 'tensioner' ? (wanted?.pressure_MPa ?? null) : null}
              unit="MPa"
              chosen={chosen.gaugeId}
              onChange={(gaugeId) => choose({ gaugeId })}
            />
          </>
        )}
        {method === 'elongation' && (
          <NumberField
            label={text('elongation')}
            unit={gap.unit}
            least={0}
            value={gap.shown(elongation_mm)}
            onChange={(shown) => choose({ elongation_mm: gap.held(shown) })}
          />
        )}
        {gapCheck && (
          <>
            <p>{text('gap-check-why')}</p>
            <GapFields values={gaps} onChange={setGaps} />
          </>
        )}
      </div>
      <StickyActionBar
        actions={
          <Button kind="primary" size="large" wide disabledReason={missing} onClick={begin}>
            {text(`begin-${position.kind}`, { pass: format.count(position.pass) })}
          </Button>
        }
      />
    </div>
  );
}
