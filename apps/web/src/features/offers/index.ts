export { OfferSection } from './components/OfferSection.tsx';
