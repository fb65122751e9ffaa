import type { FindingCode } from '../../findings/codes.ts';
import type { FindingCase } from './case.ts';
import { collectCases } from './collect.ts';
import { outletCases, questionCases } from './outlets.ts';
import { pipeCases } from './pipes.ts';
import { basinCases, electricalCases, pumpCases } from './pumping.ts';
import { siteCases } from './site.ts';

/** One case for every finding code: the compiler names the one that is missing. */
export const findingCases: Readonly<Record<FindingCode, FindingCase>> = {
  ...siteCases, ...collectCases, ...pipeCases, ...basinCases, ...pumpCases, ...electricalCases, ...outletCases, ...questionCases,
};
