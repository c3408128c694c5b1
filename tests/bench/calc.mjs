// Speed of the calculation: one JSON object on standard output.
// microseconds per target without and with working, cost per joint at 10,000 against 1,000 joints, and the ratio to
// structuredClone of the same inputs, which is about the least that handling them can cost.
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const built = await build({
  root,
  configFile: false,
  logLevel: 'silent',
  build: { ssr: `${root}/packages/calc/src/index.ts`, write: false, minify: false },
});
const chunk = built.output.find((part) => part.type === 'chunk' && part.isEntry);
const { targetWindow } = await import(`data:text/javascript;base64,${Buffer.from(chunk.code).toString('base64')}`);

const sizes = ['NPS2', 'NPS4', 'NPS6', 'NPS8', 'NPS10', 'NPS12', 'NPS16', 'NPS24'];
const joints = (count) =>
  Array.from({ length: count }, (_, i) => ({
    flange: { standard: 'ASME-B16.5', size: sizes[i % sizes.length], rating: '300' },
    gasket: {
      family: 'spiral-wound',
      contactOutside_mm: 263.7 + (i % 7),
      contactInside_mm: 233.4,
      limits: { seating_MPa: 50, operating_MPa: 20, target_MPa: 90, maximum_MPa: 200, source: 'bench' },
    },
    bolting: { grade: 'B7', condition: 'new' },
    service: { pressure_MPa: 1 + (i % 13) / 10, temperature_C: 100 },
    lubricant: { nutFactor: 0.16, source: 'bench' },
    method: 'torque-wrench',
    area: 'root',
    policy: { minimumBoltUtilisation: 0.2, maximumBoltUtilisation: 0.6, scatter_percent: 20, remainingShare: 0.7 },
  }));

let kept = 0;
function microsecondsEach(inputs, run) {
  const times = [];
  for (let round = 0; round < 7; round++) {
    const start = process.hrtime.bigint();
    for (const input of inputs) kept += run(input);
    times.push(Number(process.hrtime.bigint() - start) / 1000 / inputs.length);
  }
  return times.sort((a, b) => a - b)[3];
}

const plain = (input) => targetWindow(input).passes.length;
const explained = (input) => targetWindow({ ...input, working: true }).working.length;
const cloned = (input) => structuredClone(input).area.length;
const thousand = joints(1000);
const tenThousand = joints(10_000);

for (let warm = 0; warm < 3; warm++) for (const run of [plain, explained, cloned]) microsecondsEach(thousand, run);
const small = microsecondsEach(thousand, plain);
const large = microsecondsEach(tenThousand, plain);
const withWorking = microsecondsEach(thousand, explained);
const clone = microsecondsEach(thousand, cloned);
const rounded = (value) => Number(value.toFixed(3));

console.log(
  JSON.stringify({
    target_us: rounded(small),
    targetWithWorking_us: rounded(withWorking),
    perJointRatio_10000_to_1000: rounded(large / small),
    structuredClone_us: rounded(clone),
    ratioToStructuredClone: rounded(small / clone),
    node: process.version,
    kept,
  }),
);
