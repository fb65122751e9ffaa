export { CustomerHome } from './components/CustomerHome.tsx';
