// The contract's lists, without its schemas: those would come with the first load.

export const stages = [
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

export const criticalities = ['A', 'B', 'C'] as const;

/** Flags that the register can be narrowed down to. */
export const flagsOffered = [
  'part-tight',
  'leaking',
  'rejected',
  'on-hold',
  'needs-review',
  'implausible',
  'retighten',
  'provisional-tool',
  'target-out-of-date',
  'relaxation-due',
  'temporary-fitting',
  'punch-A',
  'punch-B',
  'punch-C',
] as const;

export const jointKinds = [
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

export const gasketFamilies = [
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

export const checkingLevels = ['self', 'chargehand', 'sample', 'every', 'witness'] as const;
export const workScopes = [
  'break-and-remake',
  'new',
  'retighten-ambient',
  'test-only',
  'start-up-retorque',
  'live-tightening',
  'hot-bolting',
] as const;
export const proofWays = [
  'hydrotest',
  'pneumatic-test',
  'gas-or-sniff-test',
  'service-test',
  'exempt-closure',
] as const;
export const makePurposes = ['final', 'spade-in', 'test', 'temporary'] as const;
export const tighteningMethods = ['torque-wrench', 'hydraulic-wrench', 'tensioner', 'elongation'] as const;
export const patterns = [
  'legacy',
  'modified-legacy',
  'quadrant',
  'circular',
  'simultaneous',
  'simultaneous-circular',
] as const;
export const standards = ['ASME-B16.5', 'ASME-B16.47-A', 'ASME-B16.47-B', 'EN-1092-1', 'custom'] as const;
export const facings = ['raised-face', 'flat-face', 'ring-joint', 'tongue-and-groove', 'other'] as const;
export const partKinds = [
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
export const roles = [
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
export const qualifiedFor = ['disassembly', 'assembly', 'face-inspection', ...tighteningMethods, 'testing'] as const;
export const toolKinds = [
  'torque-wrench',
  'hydraulic-wrench',
  'tensioner',
  'pump',
  'pressure-gauge',
  'test-gauge',
  'length-gauge',
] as const;

/** Shares of the bolts under tensioners at once. */
export const coverages = [1, 0.5, 0.33, 0.25] as const;
