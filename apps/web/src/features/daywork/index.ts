export { CrewClock } from './components/CrewClock.tsx';
export { DayworkSection } from './components/DayworkSection.tsx';
