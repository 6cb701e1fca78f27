import { ErrorCodes, ResponseError, type Connection, type Message } from 'vscode-languageserver';

const EARLY = 'cofferwright/early', AGAIN = 'cofferwright/again';

/**
 * A request that comes before `initialize` is answered at once, as the protocol wants it, with the error that says so. Without this
 * it would wait for a workspace that nobody has opened yet. So is a second `initialize`: the first one's folders are what the session is about.
 */
export class NotBeforeInitialize {
    private initialized = false;

    handleMessage(message: Message, next: (message: Message) => void): void {
        const { method, id } = (message ?? {}) as { method?: unknown; id?: unknown };     // somebody may send `null`
        if (this.initialized && method === 'initialize') return next({ ...message, method: AGAIN } as Message);
        this.initialized ||= method === 'initialize';
        next(this.initialized || typeof method !== 'string' || id === undefined ? message : { ...message, method: EARLY } as Message);
    }

    answerOn(connection: Connection): void {
        connection.onRequest(EARLY, () => new ResponseError(ErrorCodes.ServerNotInitialized, 'The first request of a session is `initialize`.'));
        connection.onRequest(AGAIN, () => new ResponseError(ErrorCodes.InvalidRequest, 'A session is initialized once.'));
    }
}
