export { TrailSection } from './components/TrailSection.tsx';
