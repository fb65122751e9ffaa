export { Rain } from './components/Rain.tsx';
