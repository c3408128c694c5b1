export type {
  BoltPlanInput,
  CentreLine,
  PlanBolt,
  PlanGroup,
} from './bolt-plan-svg.ts';
export { boltPlanSvg } from './bolt-plan-svg.ts';
export type { DrawingPalette, PaletteName } from './palette.ts';
export { drawingPalettes } from './palette.ts';
export type { StageGlyphOptions } from './stage-glyph-svg.ts';
export { stageGlyphSvg } from './stage-glyph-svg.ts';
export { drawingFont } from './svg-text.ts';
