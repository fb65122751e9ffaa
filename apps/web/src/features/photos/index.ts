export { PhotosSection } from './components/PhotosSection.tsx';
export { FromCustomer } from './components/FromCustomer.tsx';
