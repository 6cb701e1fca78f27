export { sawOrder } from './saw-order.ts';
export { tapingOf, tapingWords } from './tape.ts';
export { cutOff } from './cut-off.ts';
export { settingText } from './blocks.ts';
export type * from './model.ts';
