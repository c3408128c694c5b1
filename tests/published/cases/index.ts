import type { PublishedCase } from '../published-case.ts';
import { codeLoadCases } from './code-loads.ts';
import { threadTableCases } from './thread-tables.ts';
import { pneumaticCases, studCases, tensionerCases } from './tools-and-tests.ts';
import { chartCases, craneCases, elongationCases, kdfCases, pccTorqueCases, shigleyCases } from './torque.ts';
import { stainlessCases, vdiCoarseCases, vdiFineCases } from './vdi-2230.ts';

/** Every published example that is checked, by topic. */
export const CASES: Readonly<Record<string, readonly PublishedCase[]>> = {
  'assembly preload and torque, VDI 2230': [...vdiCoarseCases, ...vdiFineCases, ...stainlessCases],
  'thread tables': threadTableCases,
  'torque and load': [...shigleyCases, ...kdfCases, ...chartCases, ...craneCases, ...pccTorqueCases],
  elongation: elongationCases,
  'code loads and flange stresses': codeLoadCases,
  'tensioner, gas test, stud length': [...tensionerCases, ...pneumaticCases, ...studCases],
};
