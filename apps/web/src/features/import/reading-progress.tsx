import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { ProgressBar } from '../../ui/progress-bar.tsx';
import type { Reading } from './use-reading.ts';

/** How far the reading of the file is, and a way to give it up. */
export function ReadingProgress({ reading, fileName }: { reading: Reading; fileName: string }) {
  const text = useText('import');
  const format = useFormat();
  const { done, total } = reading.progress ?? { done: 0, total: 0 };
  return (
    <>
      <ProgressBar
        label={text('reading', { file: fileName })}
        valueText={total === 0 ? '' : text('rows-read', { done: format.count(done), total: format.count(total) })}
        done={done}
        total={total}
      />
      <Button kind="quiet" onClick={reading.giveUp}>
        {text('stop-reading')}
      </Button>
    </>
  );
}
