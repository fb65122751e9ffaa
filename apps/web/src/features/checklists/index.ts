export { Checklist } from './components/Checklist.tsx';
export { PrintedList } from './components/PrintedList.tsx';
export { NextItem } from './components/NextItem.tsx';
