export { RuleSets } from './components/RuleSets.tsx';
export { LocatesSection } from './components/LocatesSection.tsx';
