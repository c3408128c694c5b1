/** What a unit measures. */
export type Measure = 'pressure' | 'temperature' | 'length';

export interface Unit {
  /** The name shown and stored, for example `bar`. */
  readonly name: string;
  readonly measure: Measure;
  /** Value in the SI unit of the calculation (MPa gauge, °C, mm) from the value as entered. */
  readonly toSi: (value: number) => number;
  /** The pressure counts from vacuum; the reading takes one standard atmosphere off. */
  readonly absolute?: true;
}

/** Standard atmosphere, ISO 2533. */
const atmosphere_MPa = 0.101325;
/** Pound-force per square inch and kilogram-force per square centimetre in MPa, ISO 80000-4 (exact factors rounded to 9 digits). */
const psi_MPa = 0.00689475729;
const kgfPerCm2_MPa = 0.0980665;

function pressure(name: string, factor: number): Unit {
  return { name, measure: 'pressure', toSi: (value) => value * factor };
}
function absolute(name: string, factor: number): Unit {
  return {
    name,
    measure: 'pressure',
    toSi: (value) => value * factor - atmosphere_MPa,
    absolute: true,
  };
}

const spellings: readonly (readonly [pattern: RegExp, unit: Unit])[] = [
  [/^bar ?\(?a\)?$|^bar abs\.?$/, absolute('bara', 0.1)],
  [/^bar( ?\(?g\)?| gauge)?$/, pressure('bar', 0.1)],
  [/^mbar( ?\(?g\)?)?$/, pressure('mbar', 0.0001)],
  [/^mpa ?\(?a\)?$|^mpa abs\.?$/, absolute('MPa(a)', 1)],
  [/^mpa( ?\(?g\)?| gauge)?$/, pressure('MPa', 1)],
  [/^kpa ?\(?a\)?$|^kpa abs\.?$/, absolute('kPa(a)', 0.001)],
  [/^kpa( ?\(?g\)?| gauge)?$/, pressure('kPa', 0.001)],
  [/^psi ?\(?a\)?$/, absolute('psia', psi_MPa)],
  [/^(psi( ?\(?g\)?)?|lbs?\/in2|lbf\/in2)$/, pressure('psi', psi_MPa)],
  [/^(kgf?\/cm\^?2|kgf?\/sq ?cm|ksc|kg\/cm) ?\(?a\)?$/, absolute('kgf/cm²(a)', kgfPerCm2_MPa)],
  [/^(kgf?\/cm\^?2|kgf?\/sq ?cm|ksc)( ?\(?g\)?)?$/, pressure('kgf/cm²', kgfPerCm2_MPa)],
  [/^n\/mm\^?2$/, pressure('N/mm²', 1)],
  [/^((deg|°|º|˚) ?\.? ?c|c|celsius|deg celsius)$/, { name: '°C', measure: 'temperature', toSi: (value) => value }],
  [
    /^((deg|°|º|˚) ?\.? ?f|f|fahrenheit|deg fahrenheit)$/,
    {
      name: '°F',
      measure: 'temperature',
      toSi: (value) => ((value - 32) * 5) / 9,
    },
  ],
  [/^(k|kelvin)$/, { name: 'K', measure: 'temperature', toSi: (value) => value - 273.15 }],
  [/^(mm|millimet(er|re)s?)$/, { name: 'mm', measure: 'length', toSi: (value) => value }],
  [/^(cm)$/, { name: 'cm', measure: 'length', toSi: (value) => value * 10 }],
  [/^("|in\.?|ins\.?|inch|inches)$/, { name: 'in', measure: 'length', toSi: (value) => value * 25.4 }],
];

/** The unit that a text names, or undefined: `bar (g)`, `kg/cm²`, `deg C`, `psig`, `mm`. */
export function unitOf(text: string, measure?: Measure): Unit | undefined {
  const plain = text
    .replace(/²/g, '2')
    .normalize('NFKC')
    .replace(/″|”|''/g, '"')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
  const found = spellings.find(
    ([pattern, unit]) => pattern.test(plain) && (measure === undefined || unit.measure === measure),
  );
  return found?.[1];
}

/**
 * The unit that a column header names: in brackets (`Pressure (bar)`, `Temp [°F]`), behind a comma, a slash or
 * a dash, or as its last word (`Design press. barg`).
 */
export function unitOfHeader(header: string, measure: Measure): Unit | undefined {
  const text = header.slice(0, 200).replace(/\s+/g, ' ').trim();
  const bracketed = [...text.matchAll(/[([{]((?:[^()[\]{}]|\([ag]\))+)[)\]}]/gi)].map((match) => match[1]!);
  const tails = [
    /(?:[,/_:-]|\bin\b)\s*([^,_:-]+)$/i,
    /\s(\S+ ?\([ag]\))$/i,
    /\s((?:deg|°) ?\.? ?[cfk])$/i,
    /\s(\S+)$/,
    /^(\S+)$/,
  ]
    .map((pattern) => pattern.exec(text)?.[1])
    .filter((tail) => tail !== undefined);
  for (const candidate of [...bracketed, ...tails]) {
    const unit = unitOf(candidate, measure);
    if (unit) return unit;
  }
  return undefined;
}

/** Units that a question about a measure offers, usual ones first. */
export const offeredUnits: Readonly<Record<Measure, readonly string[]>> = {
  pressure: ['bar', 'MPa', 'kPa', 'psi', 'kgf/cm²'],
  temperature: ['°C', '°F'],
  length: ['mm', 'in'],
};
