export { Library } from './components/Library.tsx';
