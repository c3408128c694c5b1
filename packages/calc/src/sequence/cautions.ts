import type { Warning } from '../working.ts';
import { LEGACY_ORDERS } from './cross-order.ts';
import type { SequenceRequest } from './request.ts';

function orderSource({ boltCount, group = 1, pattern }: SequenceRequest): Warning | undefined {
  if (pattern !== 'legacy' && pattern !== 'modified-legacy') return undefined;
  const places = boltCount / group;
  if (places in LEGACY_ORDERS) return undefined;
  return {
    code: 'order-by-own-rule',
    message:
      places % 4 === 0
        ? `No list gives an order for ${places} places. This one is by a rule of this product: each four spans the quadrants, opposite bolts follow each other.`
        : `${places} places are no multiple of four. This order is by a rule of this product: opposite or nearly opposite bolts follow each other, each four spans the quadrants as evenly as the count allows.`,
  };
}

function groupingOffer({ boltCount, group = 1, pattern }: SequenceRequest): Warning | undefined {
  if (pattern !== 'legacy' || group !== 1 || boltCount < 36) return undefined;
  const groups = [12, 16, 10, 20, 11, 8].find((count) => boltCount % count === 0 && boltCount / count <= 5);
  if (groups === undefined) return undefined;
  return {
    code: 'grouping-usual',
    message: `For ${boltCount} bolts the trade often takes ${groups} groups of ${boltCount / groups} (common practice).`,
  };
}

/**
 * Where the chosen pattern asks for care. Common practice unless a source is named in the text.
 */
export function patternCautions(request: SequenceRequest): readonly Warning[] {
  const { boltCount, pattern, group = 1, tools = 1 } = request;
  const cautions: (Warning | undefined)[] = [orderSource(request), groupingOffer(request)];
  if (pattern === 'quadrant' && boltCount < 16) {
    cautions.push({
      code: 'pattern-for-16-and-more',
      message: `The quadrant pattern is meant for 16 bolts and more; this joint has ${boltCount}. Use legacy.`,
    });
  }
  if (pattern === 'modified-legacy' && boltCount / group < 12) {
    cautions.push({
      code: 'pattern-needs-more-places',
      message: `Modified legacy takes four bolts to each rising percent; with ${boltCount / group} places the pattern starts again at its first bolt. Use legacy.`,
    });
  }
  if (pattern === 'circular') {
    cautions.push({
      code: 'circular-is-local',
      message:
        'Between its four leading bolts a circular round loads one side first: not for thin flanges or soft gaskets without a trial or a simulation.',
    });
  }
  if (group > 1) {
    cautions.push({
      code: 'grouping-loads-locally',
      message: `Groups of ${group} load the gasket locally before the opposite side follows: watch the gap, add a pass for soft gaskets.`,
    });
  }
  if (tools > 1 && boltCount % tools !== 0) {
    cautions.push({
      code: 'tools-not-equally-spaced',
      message: `${tools} tools do not divide ${boltCount} bolts: spacing is as even as possible and the last set has fewer bolts.`,
    });
  }
  if (tools > 1) {
    cautions.push({
      code: 'tools-on-one-source',
      message:
        'Tools used at once must be on one pressure source with equal hoses and equal areas, or their loads differ.',
    });
  }
  return cautions.filter((caution) => caution !== undefined);
}
