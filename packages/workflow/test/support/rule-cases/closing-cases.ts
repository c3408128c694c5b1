import { DEFAULT_SETTINGS } from '@seatwell/workflow';
import * as id from '../ids.ts';
import { PAYLOADS } from '../payloads.ts';
import { specification } from '../register.ts';
import { toldTo } from '../story.ts';
import { at, type RuleCase } from './rule-case.ts';
import { alignment, bolting, faces, gasket, ofCriticality, specified, unqualified } from './situations.ts';

/** Faces and nipping up. */
export const CLOSING_CASES: Readonly<Record<string, RuleCase>> = {
  'faces.every-face': at('open', 'faces-inspected', {
    change: { faces: PAYLOADS['faces-inspected'].faces.slice(0, 1) },
  }),
  'faces.measured': at(
    'open',
    'faces-inspected',
    { change: faces({ flatness_mm: null }) },
    { story: () => toldTo('open', ofCriticality('A')) },
  ),
  'faces.flatness': at(
    'open',
    'faces-inspected',
    { change: faces({ flatness_mm: 0.3 }) },
    { change: faces({ flatness_mm: 0.25 }) },
  ),
  'faces.imperfections': at(
    'open',
    'faces-inspected',
    // The gasket covers 15.15 mm: a mark over more than half of it is a hair deep at most.
    { change: faces({ condition: 'scored', imperfectionDepth_mm: 0.2, imperfectionExtent_mm: 9 }) },
    { change: faces({ condition: 'scored', imperfectionDepth_mm: 0.7, imperfectionExtent_mm: 7 }) },
  ),
  'faces.ring-groove': at(
    'open',
    'faces-inspected',
    { change: faces({ ringGrooveTouched: false }) },
    {
      story: () => toldTo('open', specified({ flange: { ...specification.flange, facing: 'ring-joint' } })),
      change: faces({ ringGrooveTouched: true }),
    },
  ),
  'faces.bolting': at('open', 'faces-inspected', { change: { bolting: { condition: 'reused', accepted: false } } }),
  'faces.qualified': at('open', 'faces-inspected', { around: unqualified(id.ANA) }),

  'nipped-up.faces-not-lapsed': at('faces accepted', 'nipped-up', {
    story: () => toldTo('faces accepted').wait(DEFAULT_SETTINGS.faceAcceptanceLapses_h),
  }),
  'nipped-up.gasket-family': at('faces accepted', 'nipped-up', { change: gasket({ family: 'graphite-sheet' }) }),
  'nipped-up.gasket-size': at('faces accepted', 'nipped-up', { change: gasket({ rating: '300' }) }),
  'nipped-up.gasket-purpose': at('faces accepted', 'nipped-up', { change: gasket({ purpose: 'test' }) }),
  'nipped-up.gasket-count': at('faces accepted', 'nipped-up', { change: gasket({ count: 2 }) }),
  'nipped-up.gasket-identified': at('faces accepted', 'nipped-up', {
    change: gasket({ batch: null, markingPhoto: null }),
  }),
  'nipped-up.bolting-as-target': at('faces accepted', 'nipped-up', { change: bolting({ grade: 'B8' }) }),
  'nipped-up.lubricant-as-target': at('faces accepted', 'nipped-up', {
    change: { lubricantId: id.uuid(88), lubricant: 'Engine oil' },
  }),
  'nipped-up.alignment': at('faces accepted', 'nipped-up', { change: alignment({ offset_mm: 1.8 }) }),
  'nipped-up.alignment-beyond-band': at('faces accepted', 'nipped-up', { change: alignment({ offset_mm: null }) }),
  'nipped-up.qualified': at('faces accepted', 'nipped-up', { around: unqualified(id.ANA) }),
};
