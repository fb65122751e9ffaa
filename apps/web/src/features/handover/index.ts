export { HandoverSection } from './components/HandoverSection.tsx';
