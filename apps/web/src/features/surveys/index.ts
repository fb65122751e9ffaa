export { Levels } from './components/Levels.tsx';
export { Yard } from './components/yard/Yard.tsx';
