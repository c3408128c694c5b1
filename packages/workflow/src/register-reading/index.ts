// The package's index re-exports this folder: reading a register from the cells of a sheet.
export { type BoltValue, parseBolt } from './bolt.ts';
export { parseCriticality } from './criticality.ts';
export { type DateOrder, parseDate } from './date.ts';
export { type Facing, parseFacing } from './facing.ts';
export { type GasketFamily, parseGasketFamily } from './gasket-family.ts';
export { type InsertType, type JointKind, type KindValue, parseKind } from './kind.ts';
export { pairedSize } from './nominal-sizes.ts';
export { type DecimalMark, parseCount, parseNumber } from './number-text.ts';
export { parseQuantity, type Quantity } from './quantity.ts';
export { parseRating, type RatingSystem, type RatingValue } from './rating.ts';
export { type Cell, type Choice, plainText, type Question, type Reading } from './reading.ts';
export { parseSize, type SizeSystem, type SizeValue } from './size.ts';
export { type FlangeStandard, parseStandard } from './standard.ts';
export { type Measure, type Unit, unitOf, unitOfHeader } from './units.ts';
export { parseWorkScope, type WorkScope } from './work-scope.ts';
