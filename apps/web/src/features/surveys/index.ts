export { Levels } from './components/Levels.tsx';
