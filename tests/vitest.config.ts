import { defineConfig } from 'vitest/config';
import { readFileSync } from 'node:fs';

/** `.coffer` and font files are bundled as text and base64, by esbuild in the product and by this in tests. */
const assets = {
    name: 'coffer-assets',
    enforce: 'pre' as const,
    load(id: string): string | undefined {
        const file = id.split('?')[0]!;
        if (/\.(coffer|md)$/.test(file)) return `export default ${JSON.stringify(readFileSync(file, 'utf8'))}`;
        if (/\.woff2?$/.test(file)) return `export default ${JSON.stringify(readFileSync(file, 'base64'))}`;
        return undefined;
    },
};

export default defineConfig({
    plugins: [assets],
    test: { root: new URL('..', import.meta.url).pathname, include: ['tests/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 60_000 },
});
