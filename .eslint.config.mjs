// Rules that find mistakes; style is nobody's business here. The purity of the core is checked by tests/structure.
import tseslint from 'typescript-eslint';

export default tseslint.config(
    { ignores: ['src/*/generated/**', '**/*.d.ts'] },
    {
        files: ['src/**/*.ts', 'tests/**/*.ts'],
        extends: [tseslint.configs.recommended],
        languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
        rules: {
            // promises that nobody waits for swallow their errors
            '@typescript-eslint/no-floating-promises': 'error',
            '@typescript-eslint/no-misused-promises': 'error',
            '@typescript-eslint/await-thenable': 'error',
            // a new kind of trouble, part or spacing must be handled everywhere
            '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
            '@typescript-eslint/require-array-sort-compare': ['error', { ignoreStringArrays: true }],
            '@typescript-eslint/no-base-to-string': 'error',
            '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true }],
            // `noUncheckedIndexedAccess` is on; an index known to be there is marked with `!`
            '@typescript-eslint/no-non-null-assertion': 'off',
            eqeqeq: ['error', 'always', { null: 'ignore' }],
            // a line is read at a glance; a sentence or a pattern in quotes may be longer
            'max-len': ['error', { code: 160, ignoreStrings: true, ignoreTemplateLiterals: true, ignoreRegExpLiterals: true, ignoreUrls: true }],
            'no-else-return': 'off',
            'no-restricted-syntax': ['error', {
                selector: 'CallExpression[callee.property.name="localeCompare"]',
                message: 'Sorts differently from machine to machine: compare with < instead.',
            }],
        },
    },
    {
        files: ['src/build/**/*.mjs'],
        rules: { 'no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true }], eqeqeq: ['error', 'always', { null: 'ignore' }] },
    },
);
