import type { ExitCode } from './exit-code.ts';
import type { FoundFile } from './file-system.ts';
import type { StopReason } from './interrupts.ts';
import type { Act, Performance } from './rehearsal.ts';
import type { ColorChoice } from './terminal.ts';

/** What the thread of the command is given. */
export interface Called { readonly argv: readonly string[]; readonly cwd: string }

/** From the thread of the command to the main one. */
export type ToFront =
    | { readonly color: ColorChoice }
    | { readonly progress: string }
    | { readonly act: Act }
    | { readonly searches: true }
    | { readonly ready: Performance }
    | { readonly asked: Asked; readonly id: number }
    | { readonly serve: true }
    | { readonly end: ExitCode };

/** What the command waits for: standard input, or that a file of the carpenter's has been written anew. */
export type Asked = 'stdin' | { readonly replace: string; readonly content: string; readonly before: FoundFile };
/** Errors lose their code on the way. */
export type Answered = { readonly bytes: Uint8Array } | { readonly done: true } | { readonly failed: string; readonly code?: string };

/** From the main thread to that of the command. */
export type ToCommand = { readonly stop: StopReason } | { readonly id: number; readonly answered: Answered };
