export { sawOrder } from './saw-order.ts';
export { tapingOf, tapingWords } from './tape.ts';
export { settingText } from './blocks.ts';
export type * from './model.ts';
