import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseCriticality } from '../../src/register-reading/criticality.ts';
import { parseDate } from '../../src/register-reading/date.ts';
import { parseFacing } from '../../src/register-reading/facing.ts';
import { parseGasketFamily } from '../../src/register-reading/gasket-family.ts';
import { parseKind } from '../../src/register-reading/kind.ts';
import { parseCount, parseNumber } from '../../src/register-reading/number-text.ts';
import { parseQuantity } from '../../src/register-reading/quantity.ts';
import { parseStandard } from '../../src/register-reading/standard.ts';
import { unitOf, unitOfHeader } from '../../src/register-reading/units.ts';
import { parseWorkScope } from '../../src/register-reading/work-scope.ts';
import { codeOf, questionOf, valueRead } from './support.ts';

describe('numbers', () => {
  it.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1 234,5', 1234.5],
    ['1\u00a0234.5', 1234.5],
    ["1'234.5", 1234.5],
    ['0.125', 0.125],
    ['0,125', 0.125],
    ['1,234,567', 1234567],
    ['−40', -40],
    ['+3', 3],
    [17, 17],
  ])('%s is %d', (written, value) => expect(valueRead(parseNumber(written))).toBe(value));
  it('1,234 and 1.234 are asked, and read once the decimal mark is known', () => {
    expect(questionOf(parseNumber('1,234')).code).toBe('decimal-mark');
    expect(questionOf(parseNumber('1.234')).choices.map((choice) => choice.label)).toEqual([
      'point: 1.234',
      'comma: 1234',
    ]);
    expect(valueRead(parseNumber('1,234', ','))).toBe(1.234);
    expect(valueRead(parseNumber('1,234', '.'))).toBe(1234);
  });
  it.each(['1,5.3', '12a', '', '1.2.3', '12 34'])('%s is no number', (written) =>
    expect(codeOf(parseNumber(written))).toMatch(/^number-/),
  );
  it('a comma where the column has points is refused, not read as thousands', () => {
    expect(codeOf(parseNumber('12,5', '.'))).toBe('number-unreadable');
  });
  it('never answers a number that is not finite', () => {
    fc.assert(
      fc.property(fc.oneof(fc.double(), fc.string(), fc.stringMatching(/^[\d.,e '-]{0,14}$/)), (cell) => {
        const reading = parseNumber(cell);
        if (reading.ok) expect(Number.isFinite(reading.value)).toBe(true);
      }),
    );
  });
  it('counts bolts and gaskets', () => {
    expect(valueRead(parseCount('8 No.', 'bolt count', 400))).toBe(8);
    expect(valueRead(parseCount(12, 'bolt count', 400))).toBe(12);
    expect(codeOf(parseCount('8.5', 'bolt count', 400))).toBe('bolt-count-unreadable');
    expect(codeOf(parseCount(0, 'bolt count', 400))).toBe('bolt-count-unreadable');
  });
});

describe('units and quantities', () => {
  it.each([
    ['Pressure (bar)', 'pressure', 'bar'],
    ['Des. Press. [barg]', 'pressure', 'bar'],
    ['Design pressure bar(g)', 'pressure', 'bar'],
    ['Design Pressure (bar(g))', 'pressure', 'bar'],
    ['DP, kPag', 'pressure', 'kPa'],
    ['Test press. in MPa', 'pressure', 'MPa'],
    ['P psig', 'pressure', 'psi'],
    ['Pressure kg/cm²', 'pressure', 'kgf/cm²'],
    ['Pressure (kg/cm2g)', 'pressure', 'kgf/cm²'],
    ['Pressure (psia)', 'pressure', 'psia'],
    ['Temp [°F]', 'temperature', '°F'],
    ['Des Temp deg C', 'temperature', '°C'],
    ['Design temperature, °C', 'temperature', '°C'],
    ['Stud length (mm)', 'length', 'mm'],
    ['Length in', 'length', 'in'],
  ] as const)('%s names a %s in %s', (header, measure, unit) => expect(unitOfHeader(header, measure)?.name).toBe(unit));
  it('a header without unit names none', () => expect(unitOfHeader('Design pressure', 'pressure')).toBeUndefined());
  it('keeps what was entered beside the SI value', () => {
    expect(valueRead(parseQuantity('10', 'pressure', unitOf('barg')))).toEqual({
      si: 1,
      entered: { value: 10, unit: 'bar' },
    });
    expect(valueRead(parseQuantity(212, 'temperature', unitOf('°F')))).toEqual({
      si: 100,
      entered: { value: 212, unit: '°F' },
    });
    expect(valueRead(parseQuantity('150 psig', 'pressure')).si).toBeCloseTo(1.034214, 6);
    expect(valueRead(parseQuantity('3 1/4', 'length', unitOf('in'))).si).toBeCloseTo(82.55, 9);
  });
  it('the unit in the cell goes before the unit of the column', () => {
    expect(valueRead(parseQuantity('10 barg', 'pressure', unitOf('MPa'))).entered.unit).toBe('bar');
  });
  it('absolute pressure becomes gauge and says so', () => {
    expect(valueRead(parseQuantity('2 bara', 'pressure'))).toEqual({
      si: 0.098675,
      entered: { value: 2, unit: 'bara' },
      fromAbsolute: true,
    });
  });
  it('asks for a unit that stands nowhere', () =>
    expect(questionOf(parseQuantity('10', 'pressure')).code).toBe('pressure-unit'));
  it.each(['10/FV', 'ambient', '10 apples'])('%s is no pressure', (written) =>
    expect(codeOf(parseQuantity(written, 'pressure', unitOf('bar')))).toMatch(/^(pressure|number)-unreadable$/),
  );
  it('refuses an impossible temperature', () =>
    expect(codeOf(parseQuantity(-300, 'temperature', unitOf('°C')))).toBe('temperature-implausible'));
});

describe('dates', () => {
  it.each([
    ['2026-03-05', '2026-03-05'],
    ['2026/3/5', '2026-03-05'],
    ['2026-03-05T14:30:00', '2026-03-05'],
    ['20260305', '2026-03-05'],
    ['13/05/2026', '2026-05-13'],
    ['05/13/2026', '2026-05-13'],
    ['05.03.2026', '2026-03-05'],
    ['5.3.26', '2026-03-05'],
    ['4/4/26', '2026-04-04'],
    ['5-Mar-26', '2026-03-05'],
    ['5 March 2026', '2026-03-05'],
    ['March 5, 2026', '2026-03-05'],
    ['Thu 5th Mar 2026', '2026-03-05'],
    ['5. Mai 2026', '2026-05-05'],
    [46086, '2026-03-05'],
    ['46086', '2026-03-05'],
    [new Date(Date.UTC(2026, 2, 5)), '2026-03-05'],
    [new Date(Date.UTC(2026, 2, 4, 23, 59, 59, 900)), '2026-03-05'],
  ])('%s is %s', (written, date) => expect(valueRead(parseDate(written))).toBe(date));
  it('asks for the order where it is open, and reads by it', () => {
    expect(questionOf(parseDate('05/03/2026')).choices).toEqual([
      { value: 'dmy', label: 'day, month, year: 2026-03-05' },
      { value: 'mdy', label: 'month, day, year: 2026-05-03' },
    ]);
    expect(valueRead(parseDate('05/03/2026', 'dmy'))).toBe('2026-03-05');
    expect(valueRead(parseDate('05/03/2026', 'mdy'))).toBe('2026-05-03');
    expect(questionOf(parseDate('11-10-12')).choices.map((choice) => choice.value)).toEqual(['dmy', 'mdy', 'ymd']);
  });
  it('a date that does not exist in the order of the column is refused', () => {
    expect(codeOf(parseDate('05/13/2026', 'dmy'))).toBe('date-not-in-order');
    expect(codeOf(parseDate('31/02/2026'))).toBe('date-unreadable');
  });
  it.each(['soon', '', 3, '1899-12-30', new Date(Number.NaN), true])('%s is no date', (written) =>
    expect(codeOf(parseDate(written))).toBe('date-unreadable'),
  );
  it('every day from 1990 to 2099 reads back from every unambiguous form', () => {
    const day = fc.date({ min: new Date('1990-01-01'), max: new Date('2099-12-31'), noInvalidDate: true });
    fc.assert(
      fc.property(day, (date) => {
        const iso = date.toISOString().slice(0, 10);
        const [year, month, dayOfMonth] = iso.split('-') as [string, string, string];
        const name = date.toLocaleString('en-GB', { month: 'short', timeZone: 'UTC' });
        const midnight = new Date(`${iso}T00:00:00Z`);
        for (const form of [
          iso,
          `${dayOfMonth} ${name} ${year}`,
          `${dayOfMonth}.${month}.${year}`,
          midnight,
          midnight.getTime() / 86_400_000 + 25569,
        ]) {
          expect(valueRead(parseDate(form))).toBe(iso);
        }
        expect(valueRead(parseDate(`${dayOfMonth}/${month}/${year}`, 'dmy'))).toBe(iso);
        expect(valueRead(parseDate(`${month}/${dayOfMonth}/${year}`, 'mdy'))).toBe(iso);
      }),
    );
  });
});

describe('trade words', () => {
  it.each([
    ['Flange', { kind: 'flange-pair' }],
    ['blind flange', { kind: 'flange-pair' }],
    ['Spade', { kind: 'insert', insert: 'spade' }],
    ['Spec. blind', { kind: 'insert', insert: 'spectacle' }],
    ['Fig. 8', { kind: 'insert', insert: 'spectacle' }],
    ['Orifice flange', { kind: 'insert', insert: 'orifice-plate' }],
    ['Wafer check valve', { kind: 'insert', insert: 'wafer-valve' }],
    ['Ring spacer', { kind: 'insert', insert: 'spacer' }],
    ['Exchanger channel to tubesheet', { kind: 'insert', insert: 'tubesheet' }],
    ['Channel cover', { kind: 'girth' }],
    ['Exchanger girth flange', { kind: 'girth' }],
    ['Manway 24"', { kind: 'manway' }],
    ['RTJ flange', { kind: 'ring-joint' }],
    ['Clamp connector', { kind: 'clamp-connector' }],
    ['compact flange', { kind: 'compact-flange' }],
    ['PTFE lined flange', { kind: 'lined' }],
    ['GRP flange', { kind: 'lined' }],
    ['Pump suction nozzle', { kind: 'machine-nozzle' }],
    ['insulation kit', { kind: 'isolation-kit' }],
    ['flange-pair', { kind: 'flange-pair' }],
  ])('%s', (written, kind) => expect(valueRead(parseKind(written))).toEqual(kind));
  it.each([
    ['Blind', ['insert', 'flange-pair']],
    ['Butterfly valve', ['flange-pair', 'insert']],
    ['Exchanger', ['girth', 'flange-pair']],
    ['Pump with compact flange', ['machine-nozzle', 'compact-flange']],
  ])('%s is asked', (written, codes) =>
    expect(questionOf(parseKind(written)).choices.map((choice) => choice.value)).toEqual(codes),
  );
  it('refuses an unknown word with the ones that are known', () => {
    expect(codeOf(parseKind('thingummy'))).toBe('kind-of-joint-unknown');
  });
  it.each([
    ['SWG', 'spiral-wound'],
    ['Spiral wound SS316/graphite with inner ring', 'spiral-wound'],
    ['Kammprofile, graphite faced', 'grooved-metal'],
    ['CAMPROFILE', 'grooved-metal'],
    ['DJ', 'jacketed'],
    ['Corrugated metal', 'corrugated-metal'],
    ['RTJ R23 soft iron', 'ring-joint'],
    ['BX 156', 'ring-joint'],
    ['CNAF 1.5mm', 'fibre-sheet'],
    ['Compressed fibre, NBR bound', 'fibre-sheet'],
    ['PTFE', 'ptfe-sheet'],
    ['ePTFE', 'eptfe-sheet'],
    ['Expanded PTFE', 'eptfe-sheet'],
    ['Reinforced graphite', 'graphite-sheet'],
    ['EPDM rubber', 'elastomer'],
    ['Insulating gasket kit', 'isolation-kit'],
    ['None', 'none'],
    ['spiral-wound', 'spiral-wound'],
  ])('gasket %s is %s', (written, family) => expect(valueRead(parseGasketFamily(written))).toBe(family));
  it.each(['PTFE or graphite', 'sheet', 'metal', 'SWG / kammprofile', 'PTFE envelope'])(
    'gasket %s is asked',
    (written) => {
      expect(questionOf(parseGasketFamily(written)).choices.length).toBeGreaterThan(1);
    },
  );
  it.each([
    ['RF', 'raised-face'],
    ['R.F.', 'raised-face'],
    ['Raised Face', 'raised-face'],
    ['FF', 'flat-face'],
    ['RTJ', 'ring-joint'],
    ['Type B1', 'raised-face'],
    ['T&G', 'tongue-and-groove'],
    ['M/F', 'other'],
  ])('facing %s is %s', (written, facing) => expect(valueRead(parseFacing(written))).toBe(facing));
  it('two facings in one cell are asked', () => expect(questionOf(parseFacing('RF/FF')).choices).toHaveLength(2));
  it.each([
    ['Break & remake', 'break-and-remake'],
    ['B/R', 'break-and-remake'],
    ['open/close', 'break-and-remake'],
    ['New', 'new'],
    ['tie-in', 'new'],
    ['Hot bolting', 'hot-bolting'],
    ['hot torque', 'start-up-retorque'],
    ['test only', 'test-only'],
  ])('work %s is %s', (written, scope) => expect(valueRead(parseWorkScope(written))).toBe(scope));
  it('retorque alone is asked: at ambient, at start-up or live', () =>
    expect(questionOf(parseWorkScope('Re-torque')).choices).toHaveLength(3));
  it('reads the levels of the shutdown and asks what other words stand for', () => {
    expect(valueRead(parseCriticality('Cat. b'))).toBe('B');
    expect(valueRead(parseCriticality('critical service', ['critical service', 'other']))).toBe('critical service');
    expect(questionOf(parseCriticality('High')).choices.map((choice) => choice.value)).toEqual(['A', 'B', 'C']);
    expect(codeOf(parseCriticality('Z'))).toBe('criticality-unknown');
  });
  it.each([
    ['ASME B16.5', 'ASME-B16.5'],
    ['ANSI B 16.5', 'ASME-B16.5'],
    ['B16.47 Series A', 'ASME-B16.47-A'],
    ['ASME B16.47-B', 'ASME-B16.47-B'],
    ['ASME-B16.47-B', 'ASME-B16.47-B'],
    ['API 605', 'ASME-B16.47-B'],
    ['EN 1092-1', 'EN-1092-1'],
    ['DIN EN 1092-1', 'EN-1092-1'],
  ])('standard %s is %s', (written, standard) => expect(valueRead(parseStandard(written))).toBe(standard));
  it('asks for the series and for DIN, refuses what has no data', () => {
    expect(questionOf(parseStandard('ASME B16.47')).code).toBe('standard-series');
    expect(questionOf(parseStandard('DIN')).choices.map((choice) => choice.value)).toEqual(['EN-1092-1']);
    expect(codeOf(parseStandard('JIS B2220'))).toBe('standard-without-data');
  });
});
