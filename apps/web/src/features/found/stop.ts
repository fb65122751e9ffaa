// What the first page of a phone shows of this feature; the rest of it would come along through the index.
export { LineHit } from './components/LineHit.tsx';
export { StopButton } from './components/StopButton.tsx';
export { Stopped } from './components/Stopped.tsx';
