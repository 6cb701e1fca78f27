export { sawOrder } from './saw-order.ts';
export { boardName } from './lay-boards.ts';
export { tapingOf, tapingWords, type Taping } from './tape.ts';
export { settingText } from './blocks.ts';
export type * from './model.ts';
