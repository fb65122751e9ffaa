/** The edits of a draft are applied by one piece of code, in the browser and here: packages/contracts/src/document/operations.ts. */
export { applyOperations, OperationError, partOf, partsMeet, partsNeeded, valueAt } from '@yardfall/contracts';
