export { formatOrReason, formatText } from './format-text.ts';
export { CofferFormatter } from './formatter.ts';
