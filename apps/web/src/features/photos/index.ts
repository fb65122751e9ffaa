export { PhotosSection } from './components/PhotosSection.tsx';
