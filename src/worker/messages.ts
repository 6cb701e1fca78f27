import type { Found } from '../cutting/look-closer.ts';
import type { Asked } from '../cutting/questions.ts';

/** The questions of one plan, and how many steps may be spent on them. */
export interface ToBoardsWorker { readonly asked: readonly Asked[]; readonly steps: number }
export type FromBoardsWorker = { readonly found: Found } | { readonly failed: string };
