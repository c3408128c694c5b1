import { describe, expect, test } from 'vitest';
import { jointOf, makeOf, procedureOf, sourceOf, targetOf } from '../../../../../../tests/api/support/sample-sheet.ts';
import { sheetContent } from './sheet-content.ts';
import type { SheetSource } from './sheet-source.ts';

const factOf = (source: SheetSource, label: string): string | undefined =>
  sheetContent(source)
    .facts.flatMap(({ rows }) => rows)
    .find((row) => row.label === label)?.value;

const procedure = (more: Parameters<typeof procedureOf>[0]) => ({
  code: 'BP-02',
  title: 'Own',
  revision: 1,
  approved: true,
  superseded: false,
  content: procedureOf(more),
});

const withBolts = (count: number, more: Partial<SheetSource> = {}): SheetSource => {
  const make = makeOf();
  const bolting = { count, thread: 'M30', grade: 'B7', nutGrade: '2H', length_mm: 200 };
  return sourceOf({ make, joint: jointOf(make, {}, { bolting }), ...more });
};

describe('set values', () => {
  test('each pass has its share of the target in both units', () => {
    const { passes } = sheetContent(sourceOf());
    expect(passes.map(({ name, torque_Nm, torque_ftlbf }) => [name, torque_Nm, torque_ftlbf])).toEqual([
      ['1', '111', '81.9'],
      ['2', '259', '191'],
      ['3', '370', '273'],
      ['Final round', '370', '273'],
    ]);
  });

  test.each<[string, Partial<SheetSource>, string]>([
    ['no target', { make: makeOf({ target: null }) }, 'NOT VALID WITHOUT APPROVED TARGET'],
    ['a target out of date', { flags: [{ code: 'target-out-of-date', detail: '' }] }, 'NOT VALID: TARGET OUT OF DATE'],
    ['a draft procedure', { procedure: { ...procedure({}), approved: false } }, 'NOT VALID WITHOUT APPROVED PROCEDURE'],
    ['no procedure', { procedure: null }, 'NOT VALID WITHOUT APPROVED PROCEDURE'],
  ])('%s prints none and says so first', (_, more, heading) => {
    const content = sheetContent(sourceOf(more));
    expect(content.valid).toBe(false);
    expect(content.banners[0]?.heading).toBe(heading);
    expect(content.target).toBeNull();
    for (const { torque_Nm, torque_ftlbf, pump } of content.passes) {
      expect([torque_Nm, torque_ftlbf, pump]).toEqual(['–', '–', '–']);
    }
    expect(JSON.stringify(content)).not.toMatch(/370|273/);
  });

  test('a chosen pump gives the pressure on the gauge’s division and the torque that results', () => {
    const pump = {
      toolTag: 'HW-3',
      gaugeTag: 'PG-7',
      pairs: [
        { pressure_MPa: 5, torque_Nm: 100 },
        { pressure_MPa: 70, torque_Nm: 1400 },
      ],
      gaugeDivision_MPa: 0.5,
    };
    const source = sourceOf({ procedure: procedure({ method: 'hydraulic-wrench' }), pump });
    const { passes, showsPump } = sheetContent(source);
    expect(showsPump).toBe(true);
    // 259 N·m is at 12.95 MPa: the mark is 13.0 MPa, which gives 260 N·m.
    expect(passes[1]?.pump).toMatch(/^130 bar \/ \d+ psi \(260 N·m\)$/);
  });

  test('the maker’s torque is printed with its source and nothing computed', () => {
    const target = targetOf(95, {
      basis: 'makers-torque',
      boltStress_MPa: null,
      area: null,
      boltLoad_N: null,
      governedBy: 'makers-torque',
      sources: ['Maker’s sheet 12, table 3'],
    });
    const content = sheetContent(sourceOf({ make: makeOf({ target }), window: null }));
    const rows = content.target?.rows ?? [];
    expect(rows.find(({ label }) => label === 'Source')?.value).toBe('Maker’s sheet 12, table 3');
    expect(rows.map(({ label }) => label)).not.toContain('Bolt stress');
    expect(content.calculation).toBeNull();
  });
});

describe('the bolts', () => {
  test('the window names the limits that bound it', () => {
    const window = sheetContent(sourceOf()).target?.rows.find(({ label }) => label === 'Window')?.value;
    expect(window).toBe(
      'from 217 (least bolt stress) to 470 (gasket crushing) MPa; target and tool scatter inside the window',
    );
  });

  // Order of 16 bolts: ASME PCC-1 legacy cross pattern (from memory), as in tests/published.
  test('the order is printed in fours, once for passes that share it', () => {
    const { sequence } = sheetContent(withBolts(16));
    expect(sequence.lines.map(({ heading, fours }) => [heading, fours.join(' / ')])).toEqual([
      ['Pass 1, 2 and 3', '1 9 5 13 / 3 11 7 15 / 2 10 6 14 / 4 12 8 16'],
      ['Final round', 'clockwise from bolt 1: 1 2 3 … 16'],
    ]);
  });

  test('numbered in the order of tightening, the final round is spelled out clockwise', () => {
    const { sequence, plan } = sheetContent(withBolts(8, { procedure: procedure({ numbering: 'order' }) }));
    expect(sequence.lines[0]?.fours).toEqual(['1 2 3 4', '5 6 7 8']);
    // Places clockwise from bolt 1 carry the turn of the legacy order 1 5 3 7 2 6 4 8.
    expect(sequence.lines[1]?.fours.join(' ')).toBe('1 5 3 7 2 6 4 8');
    expect(plan.bolts.map(({ label }) => label).join(' ')).toBe('1 5 3 7 2 6 4 8');
  });

  test('groups have letters in clockwise order, and the order names letter and bolts', () => {
    const { sequence, plan } = sheetContent(withBolts(64, { procedure: procedure({ group: 4 }) }));
    expect(plan.groups).toHaveLength(16);
    expect(sequence.lines[0]?.fours[0]).toBe('A(1–4) I(33–36) E(17–20) M(49–52)');
    expect(plan.ownPage).toBe(true);
  });

  test('tools at once are joined, and the gap is measured at four bolts a quarter apart', () => {
    const { sequence, boxes } = sheetContent(withBolts(16, { procedure: procedure({ tools: 2 }) }));
    expect(sequence.lines[0]?.fours[0]).toContain('1+9');
    expect(boxes.gapPlaces).toEqual(['at bolt 1', 'at bolt 5', 'at bolt 9', 'at bolt 13']);
  });

  test('a count that no sequence is for says why instead of a plan', () => {
    const content = sheetContent(withBolts(3));
    expect(content.banners.map(({ code }) => code)).toContain('no-sequence');
    expect(content.plan.missing).toMatch(/No bolt plan/);
  });

  test('without viewing side and datum the sheet asks for them', () => {
    const make = makeOf();
    const whereabouts = { ...jointOf(make).whereabouts, viewedFrom: null, bolt1At: null };
    expect(sheetContent(sourceOf({ make, joint: jointOf(make, { whereabouts }) })).plan.ask).toHaveLength(2);
  });
});

describe('studs and sockets', () => {
  test('an entered length is printed as entered', () => {
    expect(factOf(sourceOf(), 'Studs')).toBe('12 × 7/8-9 UNC × 140 mm');
  });

  test('an insert’s studs are computed over the whole stack, never taken from the flange table', () => {
    const make = makeOf({ purpose: 'spade-in' });
    const part = (kind: 'flange' | 'gasket' | 'spade', thickness_mm: number) => ({ kind, thickness_mm, note: null });
    const clampedParts = [
      part('flange', 39.7),
      part('gasket', 4.5),
      part('spade', 25),
      part('gasket', 4.5),
      part('flange', 39.7),
    ];
    const bolting = { count: 12, thread: '7/8-9 UNC', grade: 'B7', nutGrade: '2H', length_mm: null };
    const source = sourceOf({ make, joint: jointOf(make, { kind: 'insert' }, { clampedParts, bolting }) });
    // 113.4 mm grip and two nuts of 55/64 in (ASME B18.2.2): 157.1 mm, to the quarter inch 158.75 mm.
    expect(factOf(source, 'Studs')).toBe('12 × 7/8-9 UNC × 159 mm');
    const { signOff } = sheetContent(source);
    expect(signOff.filter((step) => step.startsWith('Face '))).toHaveLength(4);
    expect(signOff.filter((step) => step.startsWith('Gasket '))).toHaveLength(2);
    expect(factOf(source, 'Gasket')).toBe('2 × spiral wound');
  });

  test('where a part of the stack has no thickness and the length is not entered, it is to be measured', () => {
    const make = makeOf();
    const clampedParts = [{ kind: 'wafer-valve' as const, thickness_mm: null, note: null }];
    const bolting = { count: 12, thread: '7/8-9 UNC', grade: 'B7', nutGrade: '2H', length_mm: null };
    const content = sheetContent(sourceOf({ make, joint: jointOf(make, {}, { clampedParts, bolting }) }));
    expect(JSON.stringify(content.facts)).toContain('length not known: measure');
  });

  // ASME B18.2.2: heavy hex nut 7/8, 1 7/16 in across flats.
  test('the socket is that of the heavy hex nut', () => {
    expect(factOf(sourceOf(), 'Socket')).toBe('36.51 mm (1 7/16 in) across flats, heavy hex nut');
  });
});

describe('what must be read first', () => {
  test('part tight says who left it, in which pass, and where to restart', () => {
    const make = makeOf({
      stage: 'part-tight',
      partTight: {
        pass: 2,
        lastBolt: 7,
        boltsDone: 5,
        leftAt: '2027-03-09T03:40:00Z',
        leftBy: ['p'],
        why: 'gas alarm',
        restartPass: 2,
      },
    });
    const banner = sheetContent(sourceOf({ make, names: { p: 'Theo' } })).banners.find(
      ({ code }) => code === 'part-tight',
    );
    expect(banner?.text).toBe(
      'Left in pass 2 by Theo, 9 Mar 2027, 04:40. Restart pass 2 from its first bolt. Left because: gas alarm.',
    );
  });

  test('a shortfall and deviations are printed with their reasons', () => {
    const make = makeOf({
      target: targetOf(370, { insideWindow: false, shortfallReason: 'accepted by the engineer, memo 12' }),
      deviations: [{ rule: 'nipped-up.alignment', reason: 'offset 1.9 mm', eventId: 'e', until: null }],
    });
    const content = sheetContent(sourceOf({ make }));
    expect(content.banners.find(({ code }) => code === 'shortfall')?.text).toBe('accepted by the engineer, memo 12');
    expect(JSON.stringify(content.target)).toContain('nipped-up.alignment: offset 1.9 mm');
    expect(JSON.stringify(content.target)).toContain('THE TARGET IS OUTSIDE ITS WINDOW');
  });

  test('a machine nozzle has its own limits', () => {
    const make = makeOf();
    const { readings } = sheetContent(sourceOf({ make, joint: jointOf(make, { kind: 'machine-nozzle' }) })).boxes;
    // API 686 (from memory): 0.01 mm per cm of diameter, here of the gasket's 263.7 mm; shaft 0.05 mm.
    expect(readings.find(({ name }) => name.startsWith('Parallelism'))?.limit).toBe('0.26 mm');
    expect(readings.find(({ name }) => name.startsWith('Shaft'))?.limit).toBe('0.05 mm');
  });

  test('an elastomer-bound gasket that has been hot is never retightened', () => {
    const make = makeOf();
    const gasket = { ...jointOf(make).specification.gasket, family: 'fibre-sheet' as const };
    const joint = jointOf(make, { criticality: 'A' }, { gasket, hotExposed: true });
    const content = sheetContent(sourceOf({ make, joint }));
    expect(content.passes.map(({ name }) => name)).not.toContain('Relaxation');
    expect(content.passNotes.join(' ')).toContain('NEVER retightened');
  });
});
