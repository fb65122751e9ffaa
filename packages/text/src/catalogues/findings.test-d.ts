import type { FindingCode, RemedyCode } from '@yardfall/calc';
import type { findings } from './findings.ts';

/** Compiles only while every finding and every remedy of the engine has its sentence here, and no sentence is left over. */
type Wanted = `findings.${FindingCode}` | `findings.${RemedyCode}`;
type Missing = Exclude<Wanted, keyof typeof findings>;
type Unused = Exclude<keyof typeof findings, Wanted>;

export const everyFindingIsSaid: [Missing, Unused] extends [never, never] ? true : { missing: Missing; unused: Unused } = true;
