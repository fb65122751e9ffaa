export { SignIn } from './components/SignIn.tsx';
export { Welcome } from './components/Welcome.tsx';
export { SetUp } from './components/SetUp.tsx';
export { SheetSection } from './components/SheetSection.tsx';
