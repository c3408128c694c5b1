import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { PhotoInput } from '../../ui/photo-input.tsx';
import { Problem } from '../../ui/problem.tsx';
import { useRulesProblem } from './rules-problem.ts';
import type { usePhotos } from './use-photos.ts';

/** A photo of the form; says when it has not reached the server and offers to send it again. */
export function PhotoField(props: { label: string; hint?: string; photos: ReturnType<typeof usePhotos> }) {
  const { label, hint, photos } = props;
  const text = useText('work');
  const waits = useText('offline');
  const problem = useRulesProblem()(photos.error);
  return (
    <>
      <PhotoInput
        label={label}
        {...(hint === undefined ? {} : { hint })}
        photos={photos.photos}
        onAdd={photos.add}
        onRemove={photos.remove}
      />
      {photos.here && <p>{waits('photo-kept')}</p>}
      {problem && <Problem problem={problem} actions={<Button onClick={photos.again}>{text('send-again')}</Button>} />}
    </>
  );
}
