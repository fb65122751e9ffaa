export { Checklist } from './components/Checklist.tsx';
export { PartSteps } from './components/PartSteps.tsx';
export { PrintedList } from './components/PrintedList.tsx';
export { usePartStates } from './api/usePartStates.ts';
export type { PartsNow } from './api/usePartStates.ts';
