export { SendRain } from './components/SendRain.tsx';
export { SendingLink } from './components/SendingLink.tsx';
