// What the home shows of this feature; the rest of it would come along through the index.
export { HeldBy } from './components/HeldBy.tsx';
export { OnTheTable } from './components/OnTheTable.tsx';
export { OnThisJob } from './components/OnThisJob.tsx';
