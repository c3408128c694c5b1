import * as contract from '@seatwell/contract';
import { describe, expect, test } from 'vitest';
import * as lists from './trade-lists.ts';

describe('the lists that forms offer', () => {
  test.each([
    ['stages', lists.stages, contract.STAGES],
    ['criticalities', lists.criticalities, contract.CRITICALITIES],
    ['kinds', lists.jointKinds, contract.JOINT_KINDS],
    ['gasket families', lists.gasketFamilies, contract.GASKET_FAMILIES_KNOWN],
    ['checking levels', lists.checkingLevels, contract.CHECKING_LEVELS],
    ['work scopes', lists.workScopes, contract.WORK_SCOPES],
    ['ways of proof', lists.proofWays, contract.PROOF_WAYS],
    ['purposes', lists.makePurposes, contract.MAKE_PURPOSES],
    ['methods', lists.tighteningMethods, contract.TIGHTENING_METHODS],
    ['standards', lists.standards, contract.flangeSpecification.shape.standard.options],
    ['facings', lists.facings, contract.flangeSpecification.shape.facing.options],
    ['patterns', lists.patterns, contract.procedureContent.shape.pattern.options],
    ['clamped parts', lists.partKinds, contract.clampedPart.shape.kind.options],
    ['roles', lists.roles, contract.ROLES],
    ['qualifications', lists.qualifiedFor, contract.QUALIFIED_FOR],
    ['tools', lists.toolKinds, contract.TOOL_KINDS],
  ])('%s are those of the API', (_name, offered, known) => {
    expect(offered).toEqual(known);
  });
});
