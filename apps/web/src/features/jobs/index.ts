export { AllJobs } from './components/AllJobs.tsx';
export { LocateDates } from './components/LocateDates.tsx';
export { JobBlock } from './components/JobBlock.tsx';
export { NewJobForm } from './components/NewJobForm.tsx';
export { SiteSection } from './components/SiteSection.tsx';
