// The package's index re-exports this folder: reading a register from the cells of a sheet.
export { type BoltValue, parseBolt } from './bolt.ts';
export { parseCriticality } from './criticality.ts';
export { type DateOrder, parseDate } from './date.ts';
export { type Facing, parseFacing } from './facing.ts';
export { type ColumnMapping, columnLetter, REGISTER_FIELDS, type RegisterField } from './fields.ts';
export type { FlangeAnswer, LookupFlange } from './fill-from-standard.ts';
export { parseGasketFamily } from './gasket-family.ts';
export { type ColumnGuess, type GuessedColumns, guessColumns } from './guess-columns.ts';
export { findHeaderRow, type HeaderRow, headerRowAt } from './header-row.ts';
export { type InsertType, type KindValue, parseKind } from './kind.ts';
export { pairedSize } from './nominal-sizes.ts';
export { type DecimalMark, parseCount, parseNumber } from './number-text.ts';
export { parseQuantity, type Quantity } from './quantity.ts';
export { parseRating, type RatingSystem, type RatingValue } from './rating.ts';
export { type Cell, type Choice, plainText, type Question, type Reading, withoutControlCharacters } from './reading.ts';
export {
  type ColumnReading,
  comparableTag,
  type DuplicateTag,
  duplicateTags,
  isEmptyRow,
  questionsOf,
  type RegisterQuestion,
  type RegisterReader,
  type RegisterReading,
  readRegisterRows,
  registerReader,
} from './register-reader.ts';
export type {
  RegisterInput,
  RegisterOptions,
  RegisterValues,
  RowAsk,
  RowProblem,
  RowReading,
  SheetRow,
} from './register-values.ts';
export { parseSize, type SizeSystem, type SizeValue } from './size.ts';
export { type FlangeStandard, parseStandard } from './standard.ts';
export { type Measure, type Unit, unitOf, unitOfHeader } from './units.ts';
export { parseWorkScope } from './work-scope.ts';
