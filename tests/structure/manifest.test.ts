import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { conciseFindings } from '../../src/report/findings/human.ts';
import { PAGES } from '../../src/pages/pages.ts';
import { HINTS_BY_DEFAULT } from '../../src/server/settings.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { read, root } from './files.ts';

interface Manifest {
    readonly icon: string;
    readonly activationEvents: readonly string[];
    readonly contributes: {
        readonly languages: readonly {
            readonly id: string;
            readonly extensions: readonly string[];
            readonly configuration: string;
            readonly icon: { readonly light: string; readonly dark: string };
        }[];
        readonly grammars: readonly { readonly language: string; readonly scopeName: string; readonly path: string }[];
        readonly commands: readonly {
            readonly command: string; readonly category: string; readonly icon?: string | { readonly light: string; readonly dark: string };
        }[];
        readonly keybindings: readonly { readonly command: string; readonly key: string; readonly mac: string }[];
        readonly configurationDefaults: Record<string, unknown>;
        readonly configuration: { readonly properties: Record<string, { readonly type: string; readonly default: unknown }> };
        readonly menus: Record<string, readonly { readonly command: string; readonly when?: string }[]>;
        readonly walkthroughs: readonly { readonly steps: readonly {
            readonly description: string;
            readonly media: { readonly svg?: string; readonly image?: string; readonly markdown?: string };
        }[] }[];
        readonly problemMatchers: readonly { readonly pattern: Record<'regexp' | 'file' | 'line' | 'column' | 'severity' | 'message' | 'code', never> }[];
    };
}
const text = read('package.json');
const { icon, activationEvents, contributes } = JSON.parse(text) as Manifest;

describe('the extension\'s manifest', () => {
    test('every kind of pane that has a page wakes the extension when the editor brings it back', () => {
        expect([...activationEvents].sort()).toEqual(Object.keys(PAGES).map(kind => `onWebviewPanel:cofferwright.${kind}`).sort());
    });

    test('names files that exist', () => {
        const [language] = contributes.languages;
        const named = [icon, language!.configuration, language!.icon.light, language!.icon.dark, ...contributes.grammars.map(grammar =>
            grammar.path),
            ...contributes.commands.flatMap(({ icon: own }) => (typeof own === 'object' ? [own.light, own.dark] : [])),
            ...contributes.walkthroughs.flatMap(({ steps }) => steps.map(({ media }) => media.svg ?? media.image ?? media.markdown ?? 'a step without a picture'))];
        expect(named.filter(path => !existsSync(join(root, path)))).toEqual([]);
        expect(JSON.parse(read(contributes.grammars[0]!.path))).toMatchObject({ scopeName: contributes.grammars[0]!.scopeName });
    });

    test('has a text for each of its strings, and no text without one', () => {
        const used = new Set([...text.matchAll(/"%([\w.]+)%"/g)].map(match => match[1]));
        const texts = new Set(Object.keys(JSON.parse(read('src/extension/package.nls.json')) as object));
        expect(used).toEqual(texts);
    });

    test('keeps its commands in one category and its defaults to its own language', () => {
        expect(new Set(contributes.commands.map(command => command.category))).toEqual(new Set(['Cofferwright']));
        const { '[coffer]': _, 'workbench.editor.autoLockGroups': locked, ...others } = contributes.configurationDefaults as Record<string, object>;
        expect(others).toEqual({});
        // a group of the editor's that begins with a pane holds panes alone: files open elsewhere
        expect(locked).toEqual(Object.fromEntries(Object.keys(PAGES).map(kind => [`mainThreadWebview-cofferwright.${kind}`, true])));
    });

    test('offers its commands where they make sense, and no others', () => {
        const declared = contributes.commands.map(({ command }) => command);
        const offered = Object.values(contributes.menus).flat();
        expect(offered.map(({ command }) => command).filter(command => !declared.includes(command))).toEqual([]);
        // in a list of all commands and in menus of files, a command that needs something says what
        const always = offered.filter(({ when }) => when === undefined).map(({ command }) => command);
        expect(always).toEqual(['cofferwright.newJob']);
        expect(declared.filter(command => !contributes.menus['commandPalette']!.some(item => item.command === command))).toEqual(['cofferwright.newJob']);
    });

    test('every pane has a key of its own, on a Mac too', () => {
        const { keybindings } = contributes;
        for (const kind of Object.keys(PAGES)) {
            const command = `cofferwright.show${kind.split('-').map(word => word[0]!.toUpperCase() + word.slice(1)).join('')}`;
            expect(keybindings.map(binding => binding.command)).toContain(command);
        }
        for (const keys of [keybindings.map(({ key }) => key), keybindings.map(({ mac }) => mac)]) expect(new Set(keys).size).toBe(keybindings.length);
        expect(keybindings.filter(({ command }) => !contributes.commands.some(known => known.command === command))).toEqual([]);
    });

    test('its walkthrough leads to commands that there are', () => {
        const texts = JSON.parse(read('src/extension/package.nls.json')) as Record<string, string>;
        const links = contributes.walkthroughs.flatMap(({ steps }) => steps.map(({ description }) => /\(command:([\w.]+)\)/.exec(texts[description.slice(1, -1)]!)?.[1]));
        const panes = ['showPlan', 'showSection', 'showCutList', 'showBoards', 'showView', 'showEstimate', 'showChanges', 'showSuggest', 'showPutUp'].map(command => `cofferwright.${command}`);
        expect(links).toEqual(['cofferwright.newJob', 'workbench.actions.view.problems', 'editor.action.quickFix', ...panes, 'cofferwright.check']);
    });

    test('its switches for inlay hints are those that the server asks for, with the same beginnings', () => {
        const switches = Object.entries(contributes.configuration.properties).filter(([name]) => name.startsWith('cofferwright.inlayHints.'));
        expect(Object.fromEntries(switches.map(([name, { default: value }]) => [name.split('.')[2], value]))).toEqual(HINTS_BY_DEFAULT);
    });

    test('its problem matcher reads what the command line prints', () => {
        const at = { uri: 'file:///house/den.coffer', range: { start: { line: 11, character: 4 }, end: { line: 11, character: 9 } } };
        const finding: Finding = { rule: 'bottom-wont-fit', severity: 'warning', at, message: 'It is 5 1/2" [wide].', related: [], fixes: [] };
        const printed = conciseFindings([finding], { nameOf: () => 'rooms/den.coffer', textOf: () => '' });
        const pattern = contributes.problemMatchers[0]!.pattern;
        const match = new RegExp(pattern.regexp).exec(printed.trimEnd());
        expect(['file', 'line', 'column', 'severity', 'message', 'code'].map(group => match?.[pattern[group as 'file']])).toEqual(
            ['rooms/den.coffer', '12', '5', 'warning', 'It is 5 1/2" [wide].', 'bottom-wont-fit']);
    });
});
