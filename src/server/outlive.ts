import { format } from 'node:util';

/**
 * A mistake in the program must cost one answer and not the session: whatever nobody caught goes to the editor's log,
 * and the server goes on. Errors inside a request are answered by the protocol's library and do not come here.
 */
export function outlive(log: { error(message: string): void }): void {
    process.on('uncaughtException', error => report('Uncaught', error));
    process.on('unhandledRejection', reason => report('Nobody waited for', reason));

    function report(how: string, error: unknown): void {
        try {
            log.error(`${how}: ${error instanceof Error ? error.stack ?? error.message : String(error)}`);
        } catch {
            // the connection itself is gone: nobody is left to tell
        }
    }
}

/** Whatever a library prints goes to the editor's log. */
export function logToEditor(log: { log(message: string): void; error(message: string): void }): void {
    for (const method of ['log', 'info', 'debug', 'trace'] as const) console[method] = (...words: unknown[]) => log.log(format(...words));
    for (const method of ['warn', 'error'] as const) console[method] = (...words: unknown[]) => log.error(format(...words));
}
