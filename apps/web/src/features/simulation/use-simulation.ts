import { useEffect, useRef, useState } from 'react';
import type { JobAnswer, SimulationJob } from './run-simulation.ts';

export interface RunningSimulation {
  /** the newest answer; the one before stays until the next is here */
  readonly answer: JobAnswer | undefined;
  readonly running: boolean;
  readonly failed: string | undefined;
}

/** Runs the job in a worker; a job that was overtaken by another is dropped. */
export function useSimulation(job: SimulationJob | undefined): RunningSimulation {
  const worker = useRef<Worker | null>(null);
  const asked = useRef(0);
  const [state, setState] = useState<RunningSimulation>({ answer: undefined, running: false, failed: undefined });
  const written = job === undefined ? '' : JSON.stringify(job);

  useEffect(() => {
    return () => {
      worker.current?.terminate();
      worker.current = null;
    };
  }, []);

  useEffect(() => {
    if (written === '') return;
    const timer = setTimeout(() => {
      // A run that is under way cannot be stopped but by ending its worker.
      worker.current?.terminate();
      const fresh = new Worker(new URL('./simulation-worker.ts', import.meta.url), { type: 'module' });
      worker.current = fresh;
      const number = ++asked.current;
      setState((current) => ({ ...current, running: true, failed: undefined }));
      fresh.onmessage = ({ data }: MessageEvent<{ number: number; answer: JobAnswer }>) => {
        if (data.number === asked.current) setState({ answer: data.answer, running: false, failed: undefined });
      };
      fresh.onerror = (event) => setState((current) => ({ ...current, running: false, failed: event.message }));
      fresh.postMessage({ number, job: JSON.parse(written) });
    }, 300);
    return () => clearTimeout(timer);
  }, [written]);

  return state;
}
