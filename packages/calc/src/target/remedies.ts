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
  if (low.name === 'gasket-thermal-loss' || high.name.endsWith('thermal-gain')) {
    remedies.push({
      code: 'temperature-difference',
      message:
        'A smaller temperature difference (slower start-up, insulation, shelter), longer bolts or softer clamped parts lower its share.',
    });
  }
  if (high.name === 'bolt-maximum') {
    remedies.push({
      code: 'bolt-stress-ceiling',
      message: 'Raise the highest bolt utilisation of the policy for this joint, within yield.',
    });
  }
  if (high.name === 'bolt-yield' || high.name === 'bolt-thermal-gain') {
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
  if (high.name === 'gasket-maximum' || high.name === 'gasket-thermal-gain') {
    remedies.push({
      code: 'gasket-strength',
      message: 'A gasket with a higher maximum stress or more area raises the limit.',
    });
  }
  if (high.name.startsWith('flange')) {
    remedies.push({ code: 'flange', message: 'A flange analysis or a heavier flange may raise the limit.' });
  }
  if (high.name === 'flange-rotation') {
    remedies.push({
      code: 'gasket-rotation',
      message: 'A gasket that bears more rotation, or one nearer to the bolts, raises the limit.',
    });
  }
  remedies.push({
    code: 'accept-shortfall',
    message: 'An engineer may accept the shortfall with a reason; it is recorded with the target.',
  });
  return remedies;
}
