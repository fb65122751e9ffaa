export { OneTap } from './components/OneTap.tsx';
