// Test libraries that carry no types of their own: only what the tests of exports use of them.
declare module 'dxf' {
    export class Helper {
        constructor(text: string);
        readonly parsed: { readonly entities: readonly { readonly type: string; readonly layer: string }[] };
        toSVG(): string;
    }
}
declare module 'gltf-validator' {
    export interface Report {
        readonly issues: { readonly numErrors: number; readonly numWarnings: number; readonly numInfos: number; readonly messages: readonly { readonly code: string; readonly message: string }[] };
        readonly info: { readonly drawCallCount: number; readonly totalTriangleCount: number };
    }
    export function validateBytes(bytes: Uint8Array, options?: { readonly maxIssues?: number }): Promise<Report>;
}
