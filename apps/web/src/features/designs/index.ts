export { DesignSection } from './components/DesignSection.tsx';
export { JobDrawing } from './components/JobDrawing.tsx';
