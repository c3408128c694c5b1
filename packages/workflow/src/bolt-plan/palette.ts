/** Colours of a drawing as plain hex values: they must survive in print and inside a PDF. */
export interface DrawingPalette {
  readonly sheet: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly line: string;
  /** light, middle and full step of the accent's lightness ramp */
  readonly rampLight: string;
  readonly rampMiddle: string;
  readonly accent: string;
  readonly onAccent: string;
  readonly stop: string;
}

export type PaletteName = 'light' | 'dark' | 'bright' | 'print';

/** The drawing's colours per theme. A test of the web app holds the three screen themes equal to its tokens. */
export const drawingPalettes: Readonly<Record<PaletteName, DrawingPalette>> = {
  light: {
    sheet: '#fefdf8',
    ink: '#16232b',
    inkSoft: '#45555e',
    line: '#dcd5c7',
    rampLight: '#b4d3d9',
    rampMiddle: '#6fa6b2',
    accent: '#0c5364',
    onAccent: '#fefdf8',
    stop: '#a31f1b',
  },
  dark: {
    sheet: '#172229',
    ink: '#efede5',
    inkSoft: '#acb8be',
    line: '#333f46',
    rampLight: '#28515d',
    rampMiddle: '#3b7988',
    accent: '#8ed1df',
    onAccent: '#071822',
    stop: '#fb9689',
  },
  bright: {
    sheet: '#ffffff',
    ink: '#050f15',
    inkSoft: '#25323b',
    line: '#7b8891',
    rampLight: '#a2d1da',
    rampMiddle: '#5d9eac',
    accent: '#004052',
    onAccent: '#ffffff',
    stop: '#880d0d',
  },
  // Ink on white paper, readable from a black-and-white printer: the ramp keeps its steps as greys.
  print: {
    sheet: '#ffffff',
    ink: '#000000',
    inkSoft: '#333333',
    line: '#8c8c8c',
    rampLight: '#cfd9dc',
    rampMiddle: '#87a0a8',
    accent: '#0b3f4d',
    onAccent: '#ffffff',
    stop: '#8c1712',
  },
};
