export { Checklist } from './components/Checklist.tsx';
export { NextItem } from './components/NextItem.tsx';
