export { conflictsOf, isRemovalOfPart, type Conflict, type LaterOperation } from '@yardfall/contracts';
