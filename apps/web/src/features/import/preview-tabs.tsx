import type { ImportPreview } from '@seatwell/contract';
import { useState } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Tabs } from '../../ui/tabs.tsx';
import { ChangedRows } from './changed-rows.tsx';
import { NewRows } from './new-rows.tsx';
import { ProblemRows } from './problem-rows.tsx';

/** The rows by what would become of them: what is wrong first, then what differs, then what is new. */
export function PreviewTabs({ preview }: { preview: ImportPreview }) {
  const text = useText('import');
  const format = useFormat();
  const { counts } = preview;
  const flawed = counts.error + counts.noted;
  const [tab, setTab] = useState(flawed > 0 ? 'problems' : counts.changed > 0 ? 'changed' : 'new');
  return (
    <Tabs
      label={text('preview')}
      value={tab}
      onChange={setTab}
      tabs={[
        {
          value: 'problems',
          label: text('tab-problems'),
          count: format.count(flawed),
          content: <ProblemRows preview={preview} />,
        },
        {
          value: 'changed',
          label: text('tab-changed'),
          count: format.count(counts.changed),
          content: <ChangedRows preview={preview} />,
        },
        {
          value: 'new',
          label: text('tab-new'),
          count: format.count(counts.new),
          content: <NewRows preview={preview} kind="new" />,
        },
        {
          value: 'same',
          label: text('tab-same'),
          count: format.count(counts.same),
          content: <NewRows preview={preview} kind="same" />,
        },
      ]}
    />
  );
}
