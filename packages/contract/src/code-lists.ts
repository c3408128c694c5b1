// Apart from the schemas: forms and lists of the web app offer them, and the first page needs no library of schemas.

export const STAGES = [
  'planned',
  'engineered',
  'released',
  'open',
  'faces-accepted',
  'nipped-up',
  'part-tight',
  'tight',
  'checked',
  'proven',
  'handed-over',
] as const;

export const CRITICALITIES = ['A', 'B', 'C'] as const;

export const JOINT_KINDS = [
  'flange-pair',
  'insert',
  'girth',
  'manway',
  'ring-joint',
  'compact-flange',
  'clamp-connector',
  'lined',
  'machine-nozzle',
  'isolation-kit',
] as const;

/** Standards of flanges that the register knows; custom = by its own dimensions. */
export const STANDARDS = ['ASME-B16.5', 'ASME-B16.47-A', 'ASME-B16.47-B', 'EN-1092-1', 'custom'] as const;

export const FACINGS = ['raised-face', 'flat-face', 'ring-joint', 'tongue-and-groove', 'other'] as const;

export const GASKET_FAMILIES_KNOWN = [
  'spiral-wound',
  'grooved-metal',
  'corrugated-metal',
  'jacketed',
  'flat-metal',
  'ring-joint',
  'fibre-sheet',
  'ptfe-sheet',
  'eptfe-sheet',
  'graphite-sheet',
  'elastomer',
  'isolation-kit',
  'none',
] as const;

/** Parts that the bolts clamp. */
export const PART_KINDS = [
  'flange',
  'gasket',
  'spade',
  'spectacle',
  'spacer',
  'orifice-plate',
  'wafer-valve',
  'tubesheet',
  'blind-flange',
  'cover',
] as const;

export const MAKE_PURPOSES = ['final', 'spade-in', 'test', 'temporary'] as const;

export const WORK_SCOPES = [
  'break-and-remake',
  'new',
  'retighten-ambient',
  'test-only',
  'start-up-retorque',
  'live-tightening',
  'hot-bolting',
] as const;

export const CHECKING_LEVELS = ['self', 'chargehand', 'sample', 'every', 'witness'] as const;

export const PROOF_WAYS = [
  'hydrotest',
  'pneumatic-test',
  'gas-or-sniff-test',
  'service-test',
  'exempt-closure',
] as const;

export const TIGHTENING_METHODS = ['torque-wrench', 'hydraulic-wrench', 'tensioner', 'elongation'] as const;

export const PATTERNS = [
  'legacy',
  'modified-legacy',
  'quadrant',
  'circular',
  'simultaneous',
  'simultaneous-circular',
] as const;

/** Shares of the bolts that may be under tensioners at once: one to four groups. */
export const COVERAGES = [1, 0.5, 0.33, 0.25] as const;

export const TOOL_KINDS = [
  'torque-wrench',
  'hydraulic-wrench',
  'tensioner',
  'pump',
  'pressure-gauge',
  'test-gauge',
  'length-gauge',
] as const;

export const ROLES = [
  'technician',
  'chargehand',
  'inspector',
  'engineer',
  'coordinator',
  'operations',
  'store',
  'witness',
  'management',
  'administrator',
] as const;

/** What a qualification lets a person do. */
export const QUALIFIED_FOR = ['disassembly', 'assembly', 'face-inspection', ...TIGHTENING_METHODS, 'testing'] as const;

export const SEVERITIES = ['flag', 'reason', 'stop'] as const;

export const PUNCH_CATEGORIES = ['A', 'B', 'C'] as const;

/** Orders of the register. */
export const REGISTER_SORTS = ['tag', 'size', 'planned', 'stage', 'area', 'system', 'crew', 'criticality'] as const;
export type RegisterSort = (typeof REGISTER_SORTS)[number];
