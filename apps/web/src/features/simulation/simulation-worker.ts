import { type JobAnswer, runSimulation, type SimulationJob } from './run-simulation.ts';

// The page stays smooth: everything heavy happens here.
self.onmessage = ({ data }: MessageEvent<{ readonly number: number; readonly job: SimulationJob }>) => {
  const answer: JobAnswer = runSimulation(data.job);
  self.postMessage({ number: data.number, answer });
};
