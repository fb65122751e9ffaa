export { FoundSection } from './components/FoundSection.tsx';
