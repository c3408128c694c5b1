import type { JointKind, Role } from '@seatwell/contract';

/** A site of our own invention; any likeness to a real plant, company or person is chance. */
export const SITE = { name: 'Northmere Works', timeZone: 'Europe/Oslo', shutdown: 'Autumn shutdown' } as const;

export const AREAS = [
  { code: '10', name: 'Distillation 10' },
  { code: '20', name: 'Hydrotreater 20' },
  { code: '30', name: 'Utilities 30' },
  { code: '40', name: 'Flare and tanks 40' },
] as const;

export const SYSTEMS = [
  { code: '10-01', area: '10', name: 'Feed and preheat', medium: 'crude' },
  { code: '10-02', area: '10', name: 'Overhead', medium: 'naphtha vapour' },
  { code: '10-03', area: '10', name: 'Pumparounds', medium: 'gas oil' },
  { code: '20-01', area: '20', name: 'Reactor loop', medium: 'hydrogen and gas oil' },
  { code: '20-02', area: '20', name: 'Separation', medium: 'hydrocarbon' },
  { code: '20-03', area: '20', name: 'Stripper', medium: 'hydrocarbon' },
  { code: '20-04', area: '20', name: 'Amine wash', medium: 'amine' },
  { code: '30-01', area: '30', name: 'Steam', medium: 'steam' },
  { code: '30-02', area: '30', name: 'Cooling water', medium: 'water' },
  { code: '30-03', area: '30', name: 'Condensate', medium: 'condensate' },
  { code: '40-01', area: '40', name: 'Flare header', medium: 'flare gas' },
  { code: '40-02', area: '40', name: 'Tank lines', medium: 'product' },
] as const;

export const CREWS = [
  { code: 'D1', company: 'Halden Bolting', shift: 'day' },
  { code: 'D2', company: 'Halden Bolting', shift: 'day' },
  { code: 'D3', company: 'Vestby Mechanical', shift: 'day' },
  { code: 'D4', company: 'Vestby Mechanical', shift: 'day' },
  { code: 'N1', company: 'Halden Bolting', shift: 'night' },
  { code: 'N2', company: 'Vestby Mechanical', shift: 'night' },
] as const;

/** Six to a crew: the first is its chargehand. */
export const CREW_NAMES: Readonly<Record<string, readonly string[]>> = {
  D1: ['Marit Solheim', 'Tomas Berg', 'Joana Reis', 'Pavel Dvorak', 'Aiko Mori', 'Samir Haddad'],
  D2: ['Olu Adeyemi', 'Greta Lind', 'Ivan Petkov', 'Rosa Marin', 'Kjell Aune', 'Noor Rahman'],
  D3: ['Elin Strand', 'Mateus Rocha', 'Anna Kowal', 'Deepak Rao', 'Liam Byrne', 'Sofia Ek'],
  D4: ['Hamid Karimi', 'Vera Novak', 'Jens Moe', 'Carla Ruiz', 'Petter Dahl', 'Yara Costa'],
  N1: ['Bram de Wit', 'Lucia Ferri', 'Omar Saleh', 'Kaia Nygaard', 'Tariq Aziz', 'Mila Horvat'],
  N2: ['Ragnhild Vik', 'Andrei Popa', 'Chidi Okeke', 'Ingrid Sand', 'Bilal Khan', 'Nadia Levin'],
};

export const OFFICE: readonly { role: Role; name: string; company: string }[] = [
  { role: 'coordinator', name: 'Ines Falk', company: 'Northmere Works' },
  { role: 'engineer', name: 'Arvid Holm', company: 'Northmere Works' },
  { role: 'inspector', name: 'Judith Brand', company: 'Tri Fjord Inspection' },
  { role: 'operations', name: 'Kiran Nair', company: 'Northmere Works' },
  { role: 'store', name: 'Sondre Lie', company: 'Northmere Works' },
  { role: 'witness', name: 'Helene Aas', company: 'Client' },
  { role: 'management', name: 'Bjarne Tveit', company: 'Northmere Works' },
];

/** A family of like joints: size, class, gasket, bolts and service, and how many of them the story has. */
export interface Family {
  readonly size: string;
  readonly rating: string;
  readonly standard: 'ASME-B16.5' | 'EN-1092-1' | 'custom';
  readonly kind: JointKind;
  readonly gasket: 'spiral-wound' | 'fibre-sheet' | 'graphite-sheet' | 'grooved-metal' | 'ring-joint' | 'eptfe-sheet';
  readonly grade: string;
  readonly pressure_bar: number;
  readonly temperature_C: number;
  readonly weight: number;
}

const family = (
  size: string,
  rating: string,
  gasket: Family['gasket'],
  pressure_bar: number,
  temperature_C: number,
  weight: number,
  more: Partial<Family> = {},
): Family => ({
  size,
  rating,
  gasket,
  pressure_bar,
  temperature_C,
  weight,
  standard: rating.startsWith('PN') ? 'EN-1092-1' : 'ASME-B16.5',
  kind: 'flange-pair',
  grade: rating.startsWith('PN') ? '8.8' : 'B7',
  ...more,
});

export const FAMILIES: readonly Family[] = [
  family('NPS2', '300', 'spiral-wound', 22, 180, 9),
  family('NPS3', '300', 'spiral-wound', 22, 180, 8),
  family('NPS4', '300', 'spiral-wound', 25, 220, 9),
  family('NPS6', '300', 'spiral-wound', 25, 220, 8),
  family('NPS8', '300', 'spiral-wound', 20, 240, 6),
  family('NPS12', '300', 'spiral-wound', 18, 240, 3),
  family('NPS6', '600', 'spiral-wound', 60, 320, 4),
  family('NPS8', '600', 'spiral-wound', 60, 320, 3),
  family('NPS10', '600', 'grooved-metal', 60, 340, 2),
  family('NPS3', '150', 'fibre-sheet', 8, 60, 6),
  family('NPS4', '150', 'fibre-sheet', 8, 60, 6),
  family('NPS6', '150', 'fibre-sheet', 8, 60, 5),
  family('DN80', 'PN16', 'fibre-sheet', 8, 50, 4),
  family('DN100', 'PN16', 'fibre-sheet', 8, 50, 4),
  family('DN150', 'PN40', 'graphite-sheet', 20, 180, 3),
];
