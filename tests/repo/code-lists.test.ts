import { GASKET_FAMILY_CODES, TIGHTENING_METHODS as METHODS_CALCULATED, SEQUENCE_PATTERNS } from '@seatwell/calc';
import { GASKET_FAMILIES_KNOWN, PATTERNS, STAGES, TIGHTENING_METHODS } from '@seatwell/contract';
import { stagesFor } from '@seatwell/workflow';
import { describe, expect, it } from 'vitest';

// The calculation depends on nothing and the rules on types only, so each has its own copy of these.
describe('lists of the contract that another package has too', () => {
  it.each([
    ['gasket families of the calculation', GASKET_FAMILY_CODES, GASKET_FAMILIES_KNOWN],
    ['patterns of the calculation', SEQUENCE_PATTERNS, PATTERNS],
    ['tightening methods of the calculation', METHODS_CALCULATED, TIGHTENING_METHODS],
    ['stages of a joint that is broken and made again', stagesFor('break-and-remake'), STAGES],
  ])('%s are those of the contract, in its order', (_name, own, contract) => expect(own).toEqual(contract));
});
