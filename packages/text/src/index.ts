export { catalogue, type Message } from './catalogue.ts';
export { languages, unitSystems, localeOf, type Language, type Units } from './languages.ts';
export { messages } from './messages.ts';
export { render, isMessageCode, type MessageCode, type Params } from './render.ts';
export { quantity, isQuantity, type QuantityKind, type NumericQuantity, type FormatOptions } from './format.ts';
export { formatTape, tapeReading, type TapeReading } from './fractions.ts';
export { parseLength, type LengthUnit, type LengthResult } from './lengths.ts';
export { explain, type ExplainOptions } from './explain/explain.ts';
export { type Paragraph, type ToldName, type ToldNumber } from './explain/tell.ts';
