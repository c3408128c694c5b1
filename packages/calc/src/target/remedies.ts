import type { Warning } from '../working.ts';
import type { WindowLimit } from './request.ts';

/** What could change when the lower limit `low` stands above the upper limit `high`. */
export function remediesFor(low: WindowLimit, high: WindowLimit): readonly Warning[] {
  const remedies: Warning[] = [];
  if (low.name.startsWith('gasket') || low.name.startsWith('code')) {
    remedies.push({
      code: 'gasket-type',
      message: 'A gasket that seats and holds at a lower stress, or with a narrower contact, lowers the limit.',
    });
  }
  if (low.name === 'bolt-minimum') {
    remedies.push({
      code: 'bolt-stress-floor',
      message: 'Lower the least bolt utilisation of the policy for this joint.',
    });
  }
  if (high.name === 'bolt-maximum') {
    remedies.push({
      code: 'bolt-stress-ceiling',
      message: 'Raise the highest bolt utilisation of the policy for this joint, within yield.',
    });
  }
  if (high.name === 'bolt-yield') {
    remedies.push({
      code: 'tool-and-friction',
      message: 'A method with less scatter or without torsion, or a lower thread friction, raises the limit.',
    });
  }
  if (high.name.startsWith('bolt')) {
    remedies.push({
      code: 'bolt-grade',
      message: 'A grade of higher yield raises the limit, where service allows it.',
    });
  }
  if (high.name === 'gasket-maximum') {
    remedies.push({
      code: 'gasket-strength',
      message: 'A gasket with a higher maximum stress or more area raises the limit.',
    });
  }
  if (high.name === 'flange-strength') {
    remedies.push({ code: 'flange', message: 'A flange analysis or a heavier flange may raise the limit.' });
  }
  remedies.push({
    code: 'accept-shortfall',
    message: 'An engineer may accept the shortfall with a reason; it is recorded with the target.',
  });
  return remedies;
}
