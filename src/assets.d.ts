// How bundlers hand over files that are no code: see src/build/bundle.mjs and tests/vitest.config.ts.
declare module '*.coffer' { const text: string; export default text; }
declare module '*.woff2' { const base64: string; export default base64; }
declare module '*.md' { const text: string; export default text; }
declare module '*.woff' { const base64: string; export default base64; }
