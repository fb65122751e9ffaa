import type { LimitId } from '@yardfall/calc';
import type { limits } from './limits.ts';

/** Compiles only while every limit of the engine has its words. */
type Missing = Exclude<`limits.${LimitId}`, keyof typeof limits>;

export const everyLimitIsSaid: [Missing] extends [never] ? true : { missing: Missing } = true;
