import type { WorkingCode, WorkingMeaning } from '@yardfall/calc';
import type { workings } from './workings.ts';

/** Compiles only while every working and every meaning of a symbol has its words here, and none are left over. */
type Wanted = `workings.${WorkingCode}` | `workings.meaning.${WorkingMeaning}`;
type Missing = Exclude<Wanted, keyof typeof workings>;
type Unused = Exclude<keyof typeof workings, Wanted>;

export const everyWorkingIsSaid: [Missing, Unused] extends [never, never] ? true : { missing: Missing; unused: Unused } = true;
