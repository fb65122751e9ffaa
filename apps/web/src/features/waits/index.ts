export { Disputes } from './components/Disputes.tsx';
export { RoomMeter } from './components/RoomMeter.tsx';
export { WaitingEntries } from './components/WaitingEntries.tsx';
