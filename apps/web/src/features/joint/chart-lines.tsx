const lineHeight = 14;

/** Lines of a text that end at `x`, their middle at `y` of a drawing. */
export function ChartLines({ lines, x, y }: { lines: readonly string[]; x: number; y: number }) {
  return (
    <text textAnchor="end">
      {lines.map((line, nth) => (
        <tspan key={line} x={x} y={y + lineHeight * (nth - (lines.length - 1) / 2)}>
          {line}
        </tspan>
      ))}
    </text>
  );
}

/** Height that lines take of a drawing. */
export const heightOf = (lines: readonly string[]): number => lineHeight * lines.length;
