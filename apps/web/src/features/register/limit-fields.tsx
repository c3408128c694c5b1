import type { QuantityName } from '@seatwell/contract';
import { type ReactNode, useState } from 'react';
import { QuantityField } from '../../app/quantity-field.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/select.tsx';
import { TextField } from '../../ui/text-field.tsx';
import styles from './joint-form.module.css';
import { type DraftProps, JointFieldGroup } from './joint-form.tsx';
import { HUB, type JointLimits, MATERIAL, PAIRS, RING, STIFFNESSES } from './joint-limits.ts';

type Named = Exclude<keyof JointLimits, 'strengthKind' | 'loadSource'>;
type NumberName = { [Name in Named]: JointLimits[Name] extends number | undefined ? Name : never }[Named];
type SourceName = Exclude<Named, NumberName>;

/** What the limits of a target need beyond pressure and temperature; what is left empty is not checked, and said so. */
export function LimitFields({ draft, onChange }: DraftProps) {
  const text = useText('jointForm');
  const words = useText('calculator');
  const { limits, standard } = draft;
  const custom = standard === 'custom';
  const set = (part: Partial<JointLimits>) => onChange({ limits: { ...limits, ...part } });
  const quantity = (name: NumberName, of: QuantityName, optional = true, hint?: string) => (
    <QuantityField
      key={name}
      label={words(`input-${name}`)}
      optional={optional}
      hint={hint}
      quantity={of}
      value={limits[name]}
      onChange={(value) => set({ [name]: value })}
    />
  );
  const plain = (name: NumberName, unit: string, hint?: string) => (
    <NumberField
      key={name}
      label={words(`input-${name}`)}
      optional
      hint={hint}
      unit={unit}
      value={limits[name]}
      onChange={(value) => set({ [name]: value })}
    />
  );
  const source = (name: SourceName) => (
    <TextField
      label={words(`input-${name}`)}
      optional
      value={limits[name] ?? ''}
      onChange={(value) => set({ [name]: value })}
    />
  );
  return (
    <JointFieldGroup legend={text('limits')}>
      <p className={`${styles.whole} ${styles.soft}`}>{text('limits-detail')}</p>
      <Part title={text('limits-loads')} open={limits.axialForce_N !== undefined}>
        {quantity('axialForce_N', 'load', true, text('limits-loads-hint'))}
        {quantity('moment_Nm', 'torque')}
        <TextField
          label={text('load-source')}
          optional
          value={limits.loadSource ?? ''}
          onChange={(loadSource) => set({ loadSource })}
        />
        {quantity('testPressure_MPa', 'pressure')}
        {plain('ribArea_mm2', 'mm²', text('rib-area-hint'))}
      </Part>
      <Part title={words('thermal')} open={limits.assembly_C !== undefined}>
        <p className={`${styles.whole} ${styles.soft}`}>{words('thermal-hint')}</p>
        {quantity('assembly_C', 'temperature')}
        {PAIRS.map((name) => quantity(name, 'temperature'))}
        {plain('flangeExpansion_ppmK', 'µm/(m·K)')}
        {source('expansionSource')}
        {STIFFNESSES.map((name) => plain(name, 'kN/mm', words('stiffness-hint')))}
        {source('stiffnessSource')}
      </Part>
      <Part
        title={words('strength')}
        open={limits.strengthKind !== undefined || limits.flangeMaximum_MPa !== undefined}
      >
        <Select
          label={words('input-strengthKind')}
          optional
          hint={words(custom ? 'strength-custom' : 'strength-rated')}
          value={limits.strengthKind ?? 'none'}
          onChange={(kind) => set({ strengthKind: kind === 'none' ? undefined : kind })}
          options={(['none', 'integral', 'loose'] as const).map((value) => ({
            value,
            label: value === 'none' ? text('strength-none') : words(`strength-${value}`),
          }))}
        />
        {limits.strengthKind !== undefined && (
          <>
            {RING.map((name) => quantity(name, 'length', !custom))}
            {HUB.map((name) => quantity(name, 'length'))}
            {MATERIAL.map((name) => quantity(name, 'stress', false))}
            {source('strengthSource')}
          </>
        )}
        {quantity('flangeMaximum_MPa', 'stress', true, text('flange-maximum-hint'))}
        {limits.flangeMaximum_MPa !== undefined && (
          <>
            {plain('rotationAtMaximum_deg', '°')}
            {source('flangeMaximumSource')}
          </>
        )}
      </Part>
    </JointFieldGroup>
  );
}

function Part({ title, open, children }: { title: string; open: boolean; children: ReactNode }) {
  // As it was when the form opened: a field that is emptied must not close what somebody works in.
  const [begun] = useState(open);
  return (
    <details className={styles.whole} open={begun || undefined}>
      <summary className={styles.summary}>{title}</summary>
      <div className={styles.fields}>{children}</div>
    </details>
  );
}
