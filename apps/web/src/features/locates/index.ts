export { GasRules } from './components/GasRules.tsx';
export { RuleSets } from './components/RuleSets.tsx';
export { LocatesSection } from './components/LocatesSection.tsx';
