export { PriceSection } from './components/PriceSection.tsx';
