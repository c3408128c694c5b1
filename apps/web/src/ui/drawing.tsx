import {
  type BoltPlanInput,
  boltPlanSvg,
  type DrawingPalette,
  drawingPalettes,
  stageGlyphSvg,
} from '@seatwell/workflow';
import { type ComponentProps, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import styles from './drawing.module.css';
import { useTheme } from './theme.tsx';

/** A complete SVG element as text, placed into the page. The text comes from our own drawing functions only. */
function Drawing({ svg, className }: { svg: string; className: string | undefined }) {
  const place = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    place.current?.replaceChildren(document.importNode(parsed(svg), true));
  }, [svg]);
  return <span ref={place} className={className} />;
}

/** The colours of drawings in the theme in use. */
export function useDrawingPalette(): DrawingPalette {
  return drawingPalettes[useTheme().theme];
}

// The signs of stages are few and stand in every row: each is parsed once, and rows are given copies.
const parsedGlyphs = new Map<string, Element>();

function glyphOf(svg: string): Element {
  const known = parsedGlyphs.get(svg) ?? parsed(svg);
  parsedGlyphs.set(svg, known);
  return known;
}

/** Parsed as XML and not as HTML: what is not a well-formed drawing does not get into the page. */
const parsed = (svg: string): Element => new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;

/** The bolt plan in the colours of the theme; it shrinks to the width it is given. */
export function BoltPlan(props: Omit<BoltPlanInput, 'palette'>) {
  const palette = useDrawingPalette();
  return <Drawing svg={boltPlanSvg({ ...props, palette })} className={styles.plan} />;
}

type Stage = Parameters<typeof stageGlyphSvg>[0];

/** The sign of a stage. Give a title only where the word does not stand beside it. */
export function StageGlyph({ stage, size = 22, title }: { stage: Stage; size?: number; title?: string }) {
  const palette = useDrawingPalette();
  const svg = useMemo(
    () => stageGlyphSvg(stage, { size, palette, ...(title === undefined ? {} : { title }) }),
    [stage, size, palette, title],
  );
  const place = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => place.current?.replaceChildren(document.importNode(glyphOf(svg), true)), [svg]);
  return <span ref={place} className={styles.glyph} />;
}

/** Sign and word of a stage side by side. */
export function StageWord({
  stage,
  children,
  size,
}: {
  stage: Stage;
  children: ComponentProps<'span'>['children'];
  size?: number;
}) {
  return (
    <span className={styles.stage} data-stop={stage === 'part-tight' ? '' : undefined}>
      <StageGlyph stage={stage} {...(size === undefined ? {} : { size })} />
      {children}
    </span>
  );
}
