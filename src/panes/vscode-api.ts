/** What the editor gives to a webview's script, once. */
interface EditorApi {
    postMessage(message: unknown): void;
    getState(): unknown;
    setState(state: unknown): void;
}
declare function acquireVsCodeApi(): EditorApi;

export const editor: EditorApi = acquireVsCodeApi();
