import { useEffect, useId, useState } from 'react';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Button } from '../../ui/button.tsx';
import { useMediaQuery } from '../../ui/use-media-query.ts';
import styles from './simulation.module.css';

interface Props {
  readonly at: number;
  readonly count: number;
  readonly onChange: (at: number) => void;
}

// Slow enough to follow a bolt, and the whole of a large flange in about half a minute.
const leastBeat_ms = 90;
const mostBeat_ms = 450;
const whole_ms = 30_000;

/** Goes through the steps: by slider, one by one, or by itself, except where motion is not wanted. */
export function Stepper({ at, count, onChange }: Props) {
  const text = useText('simulation');
  const format = useFormat();
  const sliderId = useId();
  const still = useMediaQuery('(prefers-reduced-motion: reduce)');
  const [playing, setPlaying] = useState(false);
  const last = count - 1;

  useEffect(() => {
    if (!playing) return;
    if (at >= last) {
      setPlaying(false);
      return;
    }
    const beat_ms = Math.max(leastBeat_ms, Math.min(mostBeat_ms, whole_ms / count));
    const timer = setTimeout(() => onChange(at + 1), beat_ms);
    return () => clearTimeout(timer);
  }, [playing, at, last, count, onChange]);

  const play = () => {
    if (at >= last) onChange(0);
    setPlaying(!playing);
  };
  return (
    <div className={styles.stepper}>
      {!still && <Button onClick={play}>{text(playing ? 'pause' : 'play')}</Button>}
      <Button onClick={() => onChange(Math.max(0, at - 1))}>{text('back')}</Button>
      <Button onClick={() => onChange(Math.min(last, at + 1))}>{text('next')}</Button>
      <label className={styles.slider} htmlFor={sliderId}>
        <span>{text('step', { step: format.count(at + 1), steps: format.count(count) })}</span>
        <input
          id={sliderId}
          type="range"
          min={0}
          max={last}
          value={at}
          onChange={(event) => {
            setPlaying(false);
            onChange(Number(event.target.value));
          }}
        />
      </label>
    </div>
  );
}
