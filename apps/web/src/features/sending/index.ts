export { SendingLink } from './components/SendingLink.tsx';
