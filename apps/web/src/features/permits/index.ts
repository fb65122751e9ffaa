export { PermitsSection } from './components/PermitsSection.tsx';
