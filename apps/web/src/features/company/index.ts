export { Members } from './components/Members.tsx';
