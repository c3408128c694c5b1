import { Tabs as Primitive } from 'radix-ui';
import type { ReactNode } from 'react';
import styles from './tabs.module.css';

export interface Tab {
  readonly value: string;
  readonly label: string;
  /** a formatted number beside the label */
  readonly count?: string;
  readonly content: ReactNode;
}

export interface TabsProps {
  readonly label: string;
  readonly tabs: readonly Tab[];
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** Views of one thing, one at a time. */
export function Tabs({ label, tabs, value, onChange }: TabsProps) {
  return (
    <Primitive.Root value={value} onValueChange={onChange}>
      <Primitive.List className={styles.list} aria-label={label}>
        {tabs.map((tab) => (
          <Primitive.Trigger key={tab.value} value={tab.value} className={styles.tab}>
            {tab.label}
            {tab.count !== undefined && <span className={styles.count}>{tab.count}</span>}
          </Primitive.Trigger>
        ))}
      </Primitive.List>
      {tabs.map((tab) => (
        <Primitive.Content key={tab.value} value={tab.value} className={styles.panel}>
          {tab.content}
        </Primitive.Content>
      ))}
    </Primitive.Root>
  );
}
