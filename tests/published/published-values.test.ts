import { describe, expect, it } from 'vitest';
import { CASES } from './cases/index.ts';
import { DOCUMENTS } from './documents.ts';

const LABELS = { read: '', memory: ' [from memory]', baseline: ' [baseline]' } as const;

for (const [topic, cases] of Object.entries(CASES)) {
  describe(topic, () => {
    it.each(cases.map((one) => ({ ...one, ...DOCUMENTS[one.document] })))(
      '$title, $place: $inputs',
      ({ compute, printed, held }) => {
        const ours = compute();
        expect(Object.keys(ours).sort()).toEqual(Object.keys(printed).sort());
        for (const [name, answer] of Object.entries(printed)) {
          const value = ours[name] ?? Number.NaN;
          const off = Math.abs(value - answer.value);
          expect(off, `${name}: printed ${answer.text}${LABELS[held]}, ours ${value}`).toBeLessThanOrEqual(
            answer.tolerance,
          );
        }
      },
    );
  });
}
