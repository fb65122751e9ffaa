export { buildChecklist, type BuiltItem } from './build.ts';
export { type JudgedFact } from './causality.ts';
export { isInside } from './evidence.ts';
export { foldItem, type FoldedItem } from './fold.ts';
export { handoverStep, holdPointRules, type HoldPointRule } from './guards.ts';
export { handoverHeldBy, heldBy, holdPointsNow, opens, type Held, type HoldPointNow, type ItemInState, type Moment } from './holdPoints.ts';
export { measureCode, missingText, reasonText, type MarkText } from './marks.ts';
export { itemTemplate, itemTemplates } from './templates.ts';
export { itemGroups, type ItemGroup, type ItemTemplate } from './types.ts';
