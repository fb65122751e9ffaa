export { LocatesSection } from './components/LocatesSection.tsx';
