export { ProofSection } from './components/ProofSection.tsx';
