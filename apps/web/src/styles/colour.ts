/** Linear-light red, green, blue, each 0 to 1. */
export type LinearRgb = readonly [number, number, number];

/**
 * An OKLCH colour in linear sRGB (CSS Color Module Level 4, section 18, sample code for the conversion).
 * @throws RangeError when the colour lies outside sRGB by more than the rounding of an 8-bit channel: a screen
 * would then show another colour than the one that was checked
 */
export function oklchToLinear(lightness: number, chroma: number, hue_deg: number): LinearRgb {
  const a = chroma * Math.cos((hue_deg * Math.PI) / 180);
  const b = chroma * Math.sin((hue_deg * Math.PI) / 180);
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  const rgb = [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ] as const;
  const outside = rgb.find((channel) => channel < -0.002 || channel > 1.004);
  if (outside !== undefined) {
    throw new RangeError(
      `oklch(${lightness} ${chroma} ${hue_deg}) lies outside sRGB (${outside.toFixed(4)}): lower the chroma.`,
    );
  }
  const [red, green, blue] = rgb;
  return [clip(red), clip(green), clip(blue)];
}

/** A hex colour in linear sRGB. */
export function hexToLinear(hex: string): LinearRgb {
  const channel = (start: number) => {
    const share = Number.parseInt(hex.slice(start, start + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

/** Linear sRGB as a hex colour. */
export function linearToHex(rgb: LinearRgb): string {
  const channels = rgb.map((value) => {
    const share = value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055;
    return Math.round(share * 255)
      .toString(16)
      .padStart(2, '0');
  });
  return `#${channels.join('')}`;
}

/** Contrast ratio of two colours, 1 to 21 (WCAG 2.2, definitions of contrast ratio and relative luminance). */
export function contrast(one: LinearRgb, other: LinearRgb): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

function luminance([red, green, blue]: LinearRgb): number {
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

// What remains outside is the rounding of the published matrices.
function clip(channel: number): number {
  return Math.min(1, Math.max(0, channel));
}
