export { AllJobs } from './components/AllJobs.tsx';
export { HeldBy } from './components/HeldBy.tsx';
export { OnTheTable } from './components/OnTheTable.tsx';
export { OnThisJob } from './components/OnThisJob.tsx';
export { LocateDates } from './components/LocateDates.tsx';
export { JobBlock } from './components/JobBlock.tsx';
export { NewJobForm } from './components/NewJobForm.tsx';
export { SiteSection } from './components/SiteSection.tsx';
