export { FoundSection } from './components/FoundSection.tsx';
export { LineHit } from './components/LineHit.tsx';
export { StopButton } from './components/StopButton.tsx';
