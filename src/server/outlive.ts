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
