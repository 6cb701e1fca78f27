import { EXIT, type ExitCode } from './exit-code.ts';

/** What tells the program to end: Ctrl+C, the system, a terminal that is closed. */
export const SIGNALS = { SIGINT: EXIT.interrupted, SIGTERM: EXIT.terminated, SIGHUP: EXIT.hungUp } as const;
export type SignalName = keyof typeof SIGNALS;

/** Why a command is stopped: by a signal, or because nobody reads its output any more, so that what waits for changes has nobody to wait for. */
export type StopReason = SignalName | 'nobody reads';

/** The exit code of a run that was told to end; undefined where it ends by itself. */
export function codeOfStop({ aborted, reason }: AbortSignal): ExitCode | undefined {
    return aborted && reason !== 'nobody reads' ? SIGNALS[reason as SignalName] ?? EXIT.interrupted : undefined;
}
